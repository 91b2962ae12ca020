import { z } from 'zod';
import type { Context } from '../../actions/context.ts';
import { letGoOfHold } from '../../actions/field-holds.ts';
import { substitutionSchema, substitutionViewSchema } from '../../actions/substitution/input.ts';
import { type OfferedWay, substitutionBoard } from '../../actions/substitution-board.ts';
import { substitute } from '../../actions/substitutions.ts';
import { printDifference, printedDifferenceSchema } from '../../document/print-difference.ts';
import { toMm } from '../../domain/units/length.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import {
  changeHeaders,
  createHeaders,
  itemParams,
  problems,
  readSubmission,
  readVersion,
  stamp,
} from './conventions.ts';

const lengthsMm = z.array(z.number()).describe('From the feed on.');
const waySchema = z.object({
  lengthsMm,
  taps: z
    .array(z.object({ id: z.string(), fromMm: z.number(), toMm: z.number() }))
    .describe('Tap-offs that no longer fit, with the nearest legal place that they go to.'),
  stops: z.array(z.string()).describe('Why it cannot be built; empty: it may be chosen.'),
  difference: printedDifferenceSchema,
});
const substitutesSchema = z.object({
  revision: z.number().int().describe('The released revision that it would follow.'),
  items: z.array(waySchema).describe('Those that may be chosen first, the best first.'),
  barred: z.array(z.object({ lengthsMm, jointAtMm: z.number(), by: z.string() })),
  noJoint: z.array(z.object({ fromMm: z.number(), toMm: z.number(), by: z.string() })),
  wouldFill: z.string().nullable().describe('Where nothing can be chosen: why, and what would do.'),
});

/** Other sections in the place of one, and the office's letting go of what was so put in. */
export function substitutions(app: App, context: Context): void {
  app.get(
    '/projects/:projectId/sections/:id/substitutes',
    {
      schema: {
        tags: ['Sections'],
        summary: 'What a damaged section can be made up of',
        description:
          'Stock lengths, and a factory cut where the straight part has one to spare, that add up to it, each with what it does to the run. The ETag is the version of the run.',
        params: itemParams,
        response: { 200: substitutesSchema, ...problems },
      },
    },
    async (request, reply) => {
      const { projectId, id } = request.params;
      const board = await substitutionBoard(context, viewerOf(request), projectId, id);
      stamp(reply, board.run.version);
      return {
        revision: board.run.revision,
        items: [...board.open, ...board.stopped].map(wayOf),
        barred: board.barred.map(({ lengths, at, bar }) => ({
          lengthsMm: lengths.map(toMm),
          jointAtMm: toMm(at),
          by: bar.name,
        })),
        noJoint: board.zones.map(({ from, to, name }) => ({ fromMm: toMm(from), toMm: toMm(to), by: name })),
        wouldFill: board.wouldFill,
      };
    },
  );

  app.post(
    '/projects/:projectId/sections/:id/substitutions',
    {
      schema: {
        tags: ['Sections'],
        summary: 'Put other sections in the place of one',
        description:
          'Makes a revision of the run marked as made in the field. Every other piece keeps its identity and its records, the section itself is retired with its own, and the design is kept to the new sections while its route lets them stand. If-Match is the version of the run.',
        params: itemParams,
        headers: createHeaders.extend(changeHeaders.shape),
        body: substitutionSchema,
        response: { 201: substitutionViewSchema, ...problems },
      },
    },
    async (request, reply) => {
      const { projectId, id } = request.params;
      const [viewer, version] = [viewerOf(request), readVersion(request)];
      const made = await substitute(context, viewer, projectId, id, version, request.body, readSubmission(request));
      return reply.code(201).send(made);
    },
  );

  app.delete(
    '/projects/:projectId/runs/:id/field-hold',
    {
      schema: {
        tags: ['Runs'],
        summary: 'Let go of what the floor substituted',
        description:
          'The sections of the run are chosen freely again: a change of the design, which can be undone. The floor keeps what it has until the next release. If-Match is the version of the run.',
        params: itemParams,
        headers: changeHeaders,
        response: { 204: z.void(), ...problems },
      },
    },
    async (request, reply) => {
      const { projectId, id } = request.params;
      await letGoOfHold(context, viewerOf(request), projectId, id, readVersion(request));
      return reply.code(204).send();
    },
  );
}

function wayOf({ lengths, moves, stops, difference }: OfferedWay) {
  return {
    lengthsMm: lengths.map(toMm),
    taps: moves.map(({ id, from, to }) => ({ id, fromMm: toMm(from), toMm: toMm(to) })),
    stops: stops.map(({ message }) => message),
    difference: printDifference(difference),
  };
}
