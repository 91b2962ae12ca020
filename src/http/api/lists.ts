import { z } from 'zod';
import type { Context, Viewer } from '../../actions/context.ts';
import {
  asFault,
  exportList,
  type ListOf,
  previewRunList,
  previewTapList,
  takeRunList,
  takeTapList,
} from '../../actions/lists.ts';
import { refuse } from '../../actions/refused.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { createHeaders, problems, projectParams, readSubmission } from './conventions.ts';

const listBody = z.strictObject({
  text: z
    .string()
    .max(20_000_000)
    .describe('The list with its headings: tabs as pasted from a spreadsheet, or CSV with commas or semicolons.'),
  commit: z.boolean().default(false).describe('false: says what would be made and writes nothing.'),
});

const listAnswer = z.object({
  committed: z.boolean(),
  made: z.number().int().describe('Runs or tap-offs that were made, or would be.'),
  preview: z.unknown().optional().describe('By level, with the first few; before committing only.'),
  questions: z
    .array(
      z.object({
        row: z.number().int().nullable(),
        column: z.string().nullable(),
        value: z.string(),
        problem: z.string(),
        remedy: z.string(),
      }),
    )
    .describe('Cells that are taken as typed and worth a second look.'),
});

/** Lists of runs and of tap-offs, as they come from a spreadsheet. */
export function lists(app: App, context: Context): void {
  declare(app, context, { of: 'runs', path: 'run-lists', things: 'runs' });
  declare(app, context, { of: 'taps', path: 'tap-lists', things: 'tap-offs' });
}

function declare(app: App, context: Context, { of, path, things }: { of: ListOf; path: string; things: string }): void {
  const tags = ['Lists'];
  const { preview, take } = of === 'runs' ? RUNS : TAPS;

  app.post(
    `/projects/:projectId/${path}`,
    {
      schema: {
        tags,
        summary: `Read a list of ${things}, or take it`,
        description: `All or nothing: each faulty cell is told with its row (the headings are row 1), column and remedy, and then nothing is made. What the job has already is refused, so that a list taken twice makes nothing twice.`,
        params: projectParams,
        headers: createHeaders,
        body: listBody,
        response: { 200: listAnswer, 201: listAnswer, ...problems },
      },
    },
    async (request, reply) => {
      const { projectId } = request.params;
      const { text, commit } = request.body;
      const viewer = viewerOf(request);
      if (commit) {
        const { made } = await take(context, viewer, projectId, text, readSubmission(request));
        return reply.code(201).send({ committed: true, made, questions: [] });
      }
      const read = await preview(context, viewer, projectId, text);
      if (!read.ok) return refuse({ code: 'invalid', faults: read.faults.map(asFault) });
      const questions = read.questions.map((question) => ({ ...question }));
      return reply.code(200).send({ committed: false, made: read.made.length, preview: read.preview, questions });
    },
  );

  app.get(
    `/projects/:projectId/${path}`,
    {
      schema: {
        tags,
        summary: `The job’s ${things} as a list (CSV)`,
        description: 'What the list has columns for, lengths in the units of the job; it can be read back.',
        produces: ['text/csv'],
        params: projectParams,
      },
    },
    async (request, reply) => {
      const { text } = await exportList(context, viewerOf(request), request.params.projectId, of);
      return reply.type('text/csv; charset=utf-8').send(text);
    },
  );
}

type Preview = (
  context: Context,
  viewer: Viewer,
  projectId: string,
  text: string,
) => ReturnType<typeof previewRunList> | ReturnType<typeof previewTapList>;

const RUNS: { readonly preview: Preview; readonly take: typeof takeRunList } = {
  preview: previewRunList,
  take: takeRunList,
};
const TAPS: { readonly preview: Preview; readonly take: typeof takeTapList } = {
  preview: previewTapList,
  take: takeTapList,
};
