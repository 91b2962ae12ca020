import type { FastifyReply, FastifyRequest } from 'fastify';
import { ChangesPage } from '../../../../views/pages/several/changes.tsx';
import { BULK_WORDS } from '../../../../views/words/bulk-fields.ts';
import type { Context } from '../../../actions/context.ts';
import { jobParts } from '../../../actions/job-parts.ts';
import { type BulkPreview, changeTogether, previewChanges } from '../../../actions/run-changes.ts';
import type { EntryFault } from '../../../document/form/entries.ts';
import type { JobDocument } from '../../../document/job-document.ts';
import { type BulkAsked, bulkSetSchema } from '../../../document/several/bulk-schema.ts';
import { readBulkForm } from '../../../document/several/read-bulk-form.ts';
import type { App } from '../../app-type.ts';
import { formToken } from '../../plugins/sessions.ts';
import { viewerOf } from '../../plugins/viewer.ts';
import { attempt, type FormTrouble, formSubmission } from '../form.ts';
import { goTo } from '../page.ts';
import { firstRuns, jobParams, runsQuery, seenIn, sendSeveral, severalPath } from './sheet.ts';
import { faultOfField, faultsBeside, summaryOf, type Typed, typedIn } from './typed.ts';

/** Changes of many runs: the form, what would come of it, and the change. */
export function changesTogether(app: App, context: Context): void {
  const path = '/jobs/:jobId/runs/several/changes';

  app.get(path, { schema: { hide: true, params: jobParams, querystring: runsQuery } }, async (request, reply) => {
    const runs = await firstRuns(context, request, request.params.jobId, request.query);
    return showChanges(context, request, reply, request.params.jobId, { fields: {}, runs, levels: [] });
  });

  app.post(path, { schema: { hide: true, params: jobParams } }, (request, reply) =>
    previewed(context, request, reply, request.params.jobId),
  );

  app.post(`${path}/made`, { schema: { hide: true, params: jobParams } }, async (request, reply) => {
    const { jobId } = request.params;
    const { asked, faults } = readAsked(typedIn(request), await jobParts(context, viewerOf(request), jobId));
    if (faults.length > 0) return previewed(context, request, reply, jobId);
    const tried = await attempt(() =>
      changeTogether(context, viewerOf(request), jobId, asked, seenIn(request), formSubmission(request)),
    );
    if (!tried.ok) return previewed(context, request, reply, jobId, tried.trouble);
    const { changed, released } = tried.value;
    const said = changed.length === 1 ? `Run ${changed[0]} is changed` : `${changed.length} runs are changed`;
    const draft = released.length === 0 ? '' : ` ${released.length} of them in draft only: the floor has a release.`;
    return goTo(reply, `/jobs/${jobId}/floors`, `${said} and laid out anew.${draft}`);
  });
}

async function previewed(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  jobId: string,
  refused?: FormTrouble,
): Promise<FastifyReply> {
  const typed = typedIn(request);
  const { asked, faults } = readAsked(typed, await jobParts(context, viewerOf(request), jobId));
  if (faults.length > 0) return showChanges(context, request, reply, jobId, typed, { read: faults });
  const tried = await attempt(() => previewChanges(context, viewerOf(request), jobId, asked));
  const trouble = tried.ok ? refused : tried.trouble;
  return showChanges(context, request, reply, jobId, typed, {
    ...(trouble === undefined ? {} : { trouble }),
    ...(tried.ok ? { preview: tried.value } : {}),
  });
}

/** The form by the schema that the API reads too; its faults stand beside the fields that were typed into. */
function readAsked(typed: Typed, job: JobDocument): { asked: BulkAsked; faults: readonly EntryFault[] } {
  const { set, faults } = readBulkForm(typed.fields, job.project);
  const parsed = bulkSetSchema.safeParse(set);
  if (parsed.success) return { asked: { runs: [...typed.runs], set: parsed.data }, faults };
  const shape = parsed.error.issues.map((issue) => ({
    field: fieldOf(issue.path.join('.')),
    said: `${issue.message}. Correct it, or leave the field empty.`,
  }));
  return { asked: { runs: [...typed.runs], set: {} }, faults: [...faults, ...shape] };
}

/** The field that a path of the change was typed into. */
function fieldOf(path: string): string {
  const [first = '', last = first] = path.replace(/^set\.?/, '').split('.');
  if (first === '') return 'level';
  return first === 'structure' || first === 'end' ? last : first;
}

interface Tried {
  readonly read?: readonly EntryFault[];
  readonly trouble?: FormTrouble;
  readonly preview?: BulkPreview;
}

/** The form, with what came of it. */
export async function showChanges(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  jobId: string,
  typed: Typed,
  { read = [], trouble, preview }: Tried = {},
): Promise<FastifyReply> {
  const job = await jobParts(context, viewerOf(request), jobId);
  const { units } = job.project;
  const path = severalPath(jobId, 'changes');
  const faults = faultsBeside(read, trouble, fieldOf);
  const csrf = formToken(reply);
  const { seen, ...shown } = preview ?? { seen: {} };
  return sendSeveral(context, request, reply, jobId, {
    title: 'Change runs together',
    isRefused: faults.length > 0,
    trouble,
    content: ChangesPage({
      action: `${path}#preview`,
      csrf,
      pickHref: severalPath(jobId),
      runs: typed.runs,
      entered: { ...typed.fields },
      faultOf: faultOfField(faults),
      summary: summaryOf(faults, (field) => WORDS[field] ?? field),
      levels: job.levels.map((level) => ({ value: level.id, word: `${level.id}, ${level.name}` })),
      types: job.buswayTypes.map((type) => ({ value: type.id, word: `${type.id}, ${type.ratedCurrentA} A` })),
      example: units === 'ft-in' ? `9'-3" or 2820 mm` : '2800 or 2.8 m',
      preview:
        'changed' in shown
          ? {
              ...shown,
              action: `${path}/made`,
              csrf,
              submissionId: context.newId(),
              units,
              carried: typed,
              seen: JSON.stringify(seen),
            }
          : null,
    }),
  });
}

const WORDS: Readonly<Record<string, string>> = {
  ...BULK_WORDS,
  runs: 'Runs',
  pitchMm: 'Distance between its lines',
  offsetMm: 'First line at',
  shortMm: 'It may end short by',
  longMm: 'It may end long by',
};
