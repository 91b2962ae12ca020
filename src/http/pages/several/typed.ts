import type { FastifyRequest } from 'fastify';
import type { FormFault } from '../../../../views/components/form-faults.tsx';
import type { EntryFault } from '../../../document/form/entries.ts';
import { type Entered, entered, enteredAll, type FormTrouble } from '../form.ts';

/** What a form about several runs came with. */
export interface Typed {
  readonly fields: Entered;
  readonly runs: readonly string[];
  readonly levels: readonly string[];
}

const LISTS: readonly string[] = ['runs', 'levels', 'tick', 'all', 'do'];
const OWN: readonly string[] = ['_csrf', 'submissionId', 'seen'];

export function typedIn(request: FastifyRequest): Typed {
  const list = (name: string) => enteredAll(request, name).flatMap((text) => text.split(/\r\n|\r|\n/));
  const named = (...names: string[]) => [...new Set(names.flatMap(list).filter((one) => one !== ''))];
  const fields = Object.entries(entered(request)).filter(([name]) => !LISTS.includes(name) && !OWN.includes(name));
  return { fields: Object.fromEntries(fields), runs: named('tick', 'runs'), levels: named('levels') };
}

/** The faults of a form by its fields, whoever found them. */
export function faultsBeside(
  read: readonly EntryFault[],
  trouble: FormTrouble | undefined,
  fieldOf: (path: string) => string = (path) => path,
): readonly EntryFault[] {
  const refused = (trouble?.faults ?? []).map(({ path, message, remedy }) => ({
    field: fieldOf(path),
    said: `${message} ${remedy}`.trim(),
  }));
  return [...read, ...refused];
}

export function faultOfField(faults: readonly EntryFault[]) {
  return (name: string): string | undefined => {
    const own = faults.filter((fault) => fault.field === name).map((fault) => fault.said);
    return own.length === 0 ? undefined : own.join(' ');
  };
}

export function summaryOf(faults: readonly EntryFault[], wordOf: (field: string) => string): FormFault[] {
  return faults.map(({ field, said: message }) => ({
    field: `f-${field.replace(/[^A-Za-z0-9_-]/g, '-')}`,
    label: wordOf(field),
    message,
  }));
}
