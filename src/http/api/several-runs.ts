import { z } from 'zod';
import type { Context } from '../../actions/context.ts';
import { refuse } from '../../actions/refused.ts';
import { changeTogether, previewChanges } from '../../actions/run-changes.ts';
import { makeCopies, previewCopies, type SeveralPreview } from '../../actions/run-copies.ts';
import { makePartners, previewPartners } from '../../actions/run-partners.ts';
import { madeRowSchema } from '../../actions/several/made-preview.ts';
import { seenSchema } from '../../actions/several/seen.ts';
import { bulkAskedSchema } from '../../document/several/bulk-schema.ts';
import { copyAskedSchema } from '../../document/several/plan-copies.ts';
import { partnersAskedSchema } from '../../document/several/plan-partners.ts';
import type { Finding } from '../../domain/finding.ts';
import { toMm } from '../../domain/units/length.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { createHeaders, problems, projectParams, readSubmission } from './conventions.ts';

const commit = z.boolean().default(false).describe('false: says what would come of it and writes nothing.');
const seen = seenSchema.optional();

const madeAnswer = z.object({
  committed: z.boolean(),
  made: z.array(z.string()).describe('Labels of the runs that were made, or would be.'),
  rows: z.array(madeRowSchema).optional(),
  changed: z.array(z.string()).optional().describe('Runs that would change with it.'),
  released: z
    .array(z.string())
    .optional()
    .describe('Those of them that the floor has; its pieces stay until a release.'),
  notes: z.array(z.string()).optional(),
  seen: seenSchema.optional().describe('Send it along to write only what was shown.'),
});

const findingSchema = z.object({
  rule: z.string(),
  severity: z.enum(['stop', 'warning', 'note']),
  run: z.string().nullable(),
  atMm: z.number().nullable(),
  message: z.string(),
  source: z.string(),
});

const changedAnswer = z.object({
  committed: z.boolean(),
  changed: z.array(z.string()),
  released: z.array(z.string()),
  same: z.number().int().optional().describe('Runs that have all of it already.'),
  differences: z
    .array(z.object({ run: z.string(), field: z.string(), from: z.unknown(), to: z.unknown() }))
    .optional()
    .describe('Field by field; null is not stated.'),
  appearing: z.array(findingSchema).optional().describe('Findings of the layout that would come.'),
  disappearing: z.array(findingSchema).optional().describe('Findings of the layout that would go.'),
  notes: z.array(z.string()).optional(),
  seen: seenSchema.optional(),
});

/** Several runs at once: copies, partners, changes. Each says first what would come of it. */
export function severalRuns(app: App, context: Context): void {
  app.post(
    '/projects/:projectId/run-copies',
    {
      schema: {
        tags: ['Runs'],
        summary: 'Copy runs to further rows and other levels',
        description:
          'All or nothing, in one transaction. Pairs and branches among the runs become pairs and branches of the copies. A name that is taken, a pitch of 0 and a copy that would lie in a run are refused.',
        params: projectParams,
        headers: createHeaders,
        body: copyAskedSchema.extend({ commit, seen }),
        response: { 200: madeAnswer, 201: madeAnswer, ...problems },
      },
    },
    async (request, reply) => {
      const { commit: write, seen: shown, ...asked } = request.body;
      const { projectId } = request.params;
      const viewer = viewerOf(request);
      if (!write) return reply.code(200).send(previewed(await previewCopies(context, viewer, projectId, asked)));
      const { made } = await makeCopies(context, viewer, projectId, asked, shown ?? null, readSubmission(request));
      return reply.code(201).send({ committed: true, made: [...made] });
    },
  );

  app.post(
    '/projects/:projectId/run-partners',
    {
      schema: {
        tags: ['Runs'],
        summary: 'Make the runs of the other feed side',
        description:
          'All or nothing. The mirror image over a line, or the same course beside it turned over; tap-offs serve the same equipment. The runs then name each other.',
        params: projectParams,
        headers: createHeaders,
        body: partnersAskedSchema.extend({ commit, seen }),
        response: { 200: madeAnswer, 201: madeAnswer, ...problems },
      },
    },
    async (request, reply) => {
      const { commit: write, seen: shown, ...asked } = request.body;
      const { projectId } = request.params;
      const viewer = viewerOf(request);
      if (!write) return reply.code(200).send(previewed(await previewPartners(context, viewer, projectId, asked)));
      const { made } = await makePartners(context, viewer, projectId, asked, shown ?? null, readSubmission(request));
      return reply.code(201).send({ committed: true, made: [...made] });
    },
  );

  app.post(
    '/projects/:projectId/run-changes',
    {
      schema: {
        tags: ['Runs'],
        summary: 'Change one or several fields of many runs',
        description:
          'All or nothing. To write, send `seen` of the answer that was shown: a run that changed since is refused by its name. Released runs change in the design alone, until they are released again.',
        params: projectParams,
        headers: createHeaders,
        body: bulkAskedSchema.extend({ commit, seen }),
        response: { 200: changedAnswer, ...problems },
      },
    },
    async (request) => {
      const { commit: write, seen: shown, ...asked } = request.body;
      const { projectId } = request.params;
      const viewer = viewerOf(request);
      if (!write) {
        const { appearing, disappearing, ...preview } = await previewChanges(context, viewer, projectId, asked);
        return {
          committed: false,
          ...preview,
          changed: [...preview.changed],
          released: [...preview.released],
          differences: preview.differences.map((one) => ({ ...one })),
          notes: [...preview.notes],
          appearing: appearing.map(printed),
          disappearing: disappearing.map(printed),
        };
      }
      if (shown === undefined)
        return refuse({
          code: 'invalid',
          faults: [
            {
              path: 'seen',
              message: 'A change of many runs is written only as it was shown.',
              remedy: 'Ask without commit first, and send the `seen` of that answer.',
            },
          ],
        });
      const done = await changeTogether(context, viewer, projectId, asked, shown, readSubmission(request));
      return { committed: true, changed: [...done.changed], released: [...done.released] };
    },
  );
}

function previewed({ made, rows, changed, released, notes, seen: shown }: SeveralPreview) {
  return {
    committed: false,
    made: made.map((run) => run.id),
    rows: [...rows],
    changed: [...changed],
    released: [...released],
    notes: [...notes],
    seen: shown,
  };
}

/** Lengths in millimetres, as everywhere in the API. */
function printed({ at, ...finding }: Finding) {
  return { ...finding, atMm: at === null ? null : toMm(at) };
}
