import type { Context } from '../../actions/context.ts';
import type { JobHeading } from '../../actions/job-heading.ts';
import type { FormTrouble } from './form.ts';
import type { Sheet } from './page.ts';

type Own = Pick<Sheet, 'title'> & Partial<Sheet> & { readonly trouble?: FormTrouble | undefined };

/** The sheet of a page of a job: its times in the job's zone, and why a form was refused, when one was. */
export function jobSheet(context: Context, heading: JobHeading, { trouble, ...own }: Own): Sheet {
  const { timeZone } = heading.project;
  return {
    asOf: context.clock(),
    reached: heading.reached,
    ...(timeZone === undefined ? {} : { timeZone }),
    ...(trouble === undefined ? {} : { status: trouble.status, flash: { kind: 'stop', text: trouble.notice } }),
    ...own,
  };
}
