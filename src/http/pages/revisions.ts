import { z } from 'zod';
import { RevisionsPage } from '../../../views/pages/revisions.tsx';
import { type RunBoard, runBoard } from '../../actions/boards/run-board.ts';
import type { Context } from '../../actions/context.ts';
import { compareOf, type RevisionName, revisionNameSchema } from '../../actions/revisions.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { jobSheet } from './job-sheet.ts';
import { sendPage } from './page.ts';
import { runParams } from './run.ts';

const query = z.object({
  a: revisionNameSchema.optional().catch(undefined),
  b: revisionNameSchema.optional().catch(undefined),
});

/** Two revisions of a run beside each other. */
export function revisions(app: App, context: Context): void {
  app.get(
    '/jobs/:jobId/runs/:runId/revisions',
    { schema: { hide: true, params: runParams, querystring: query } },
    async (request, reply) => {
      const { jobId, runId } = request.params;
      const board = await runBoard(context, viewerOf(request), jobId, runId);
      const { heading, level, run } = board;
      const [a, b] = chosen(board, request.query);
      const compared = a === null || b === null ? null : await compareOf(context.database.db, jobId, runId, [a, b]);
      const href = `/jobs/${jobId}/runs/${runId}`;
      return sendPage(
        request,
        reply,
        jobSheet(context, heading, {
          title: `Revisions of ${run.id}`,
          part: 'floors',
          trail: [
            { word: 'Jobs', href: '/jobs' },
            { word: heading.reached.number, href: `/jobs/${jobId}/floors` },
            { word: level.name, href: `/jobs/${jobId}/floors/${level.id}` },
            { word: run.id, href },
          ],
        }),
        RevisionsPage({
          href: `${href}/revisions`,
          units: heading.project.units,
          options: namesOf(board).map((name) => ({ value: String(name), word: wordOf(name) })),
          a: String(a),
          b: String(b),
          compared:
            compared === null
              ? null
              : {
                  difference: compared.difference,
                  before: { title: titleOf(board, compared.before.name), ...drawn(compared.before) },
                  after: { title: titleOf(board, compared.after.name), ...drawn(compared.after) },
                },
        }),
      );
    },
  );
}

/** Oldest first; the draft last, where it differs from what was released or the address asks for it. */
function namesOf({ revisions: released }: RunBoard): RevisionName[] {
  return [...released.map(({ number }) => number).reverse(), 'draft'];
}

/** What the address says, else the last two. */
function chosen(board: RunBoard, asked: z.infer<typeof query>): [RevisionName | null, RevisionName | null] {
  const { revisions: released, standing } = board;
  const names: RevisionName[] = namesOf(board).filter((name) => name !== 'draft' || standing.changed);
  if (released.length === 0) return [null, null];
  const a = asked.a ?? names.at(-2) ?? null;
  const b = asked.b ?? names.at(-1) ?? null;
  return a === null ? [null, null] : [a, b];
}

function wordOf(name: RevisionName): string {
  return name === 'draft' ? 'the design as it stands' : `revision ${name}`;
}

function titleOf({ revisions: released }: RunBoard, name: RevisionName): string {
  const reason = released.find((revision) => revision.number === name)?.reason ?? '';
  const word = wordOf(name);
  return `${word.charAt(0).toUpperCase()}${word.slice(1)}${reason === '' ? '' : `: ${reason}`}`;
}

function drawn({ run, layout }: { readonly run: RunBoard['run']; readonly layout: RunBoard['layout'] }) {
  return { run, layout };
}
