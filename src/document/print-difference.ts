import { z } from 'zod';
import type { FactValue, PieceAt, PointAt, RevisionDifference, TapAt } from '../domain/revision/difference.ts';
import { toMm } from '../domain/units/length.ts';

const piece = z.object({
  place: z.number().int().describe('1 for the first piece from the feed on.'),
  kind: z.enum(['stock', 'cut', 'elbow', 'tee']),
  hand: z.string().nullable(),
  fromMm: z.number(),
  toMm: z.number(),
});
const point = z.object({ place: z.number().int(), atMm: z.number() });
const tap = z.object({ id: z.string(), atMm: z.number() });
const value = z.union([
  z.string().nullable(),
  z.number().nullable(),
  z.object({ xMm: z.number(), yMm: z.number(), zMm: z.number() }),
  z.array(z.object({ atMm: z.number(), thicknessMm: z.number(), kind: z.string(), fireRatingMin: z.number() })),
]);
const pairOf = <T extends z.ZodType>(of: T) => z.object({ before: of, after: of });
const things = z.object({
  added: z.array(point),
  removed: z.array(point),
  moved: z.array(pairOf(point)),
  same: z.number().int(),
});

/** A difference of two revisions as the API gives it: millimetres, places counted from 1. */
export const printedDifferenceSchema = z
  .object({
    lengthMm: pairOf(z.number()),
    facts: z
      .array(z.object({ fact: z.string(), before: value, after: value }))
      .describe(
        'What the run says of itself as a whole and now says otherwise: millimetres, kilograms, amperes, degrees.',
      ),
    pieces: z.object({
      added: z.array(piece),
      removed: z.array(piece),
      moved: z.array(pairOf(piece)).describe('The same piece at another distance.'),
      replaced: z.array(pairOf(piece)).describe('Another kind or hand in the very place of one that leaves.'),
      same: z.number().int(),
    }),
    joints: things,
    supports: things,
    taps: z.object({
      added: z.array(tap),
      removed: z.array(tap),
      moved: z.array(pairOf(tap)),
      changed: z.array(z.string()).describe('Device, phase, load, cord or name differs.'),
      same: z.number().int(),
    }),
    reopens: z.object({
      joints: z.array(point),
      supports: z.array(point),
      supportLoads: z.array(pairOf(z.object({ atMm: z.number(), loadKg: z.number() }))),
      supportRods: z.number().int().describe('Hangers that stay and get other rods.'),
      turnedOver: z.boolean().describe('Tap-offs face the other side: whatever hangs comes down and is hung again.'),
      insulationTests: z.array(z.string()).describe('Runs of the electrical boundary whose test is void.'),
      labels: z.object({ joints: z.array(point), taps: z.array(z.string()) }),
      dropCords: z.array(
        z.object({ tap: z.string(), beforeMm: z.number().nullable(), afterMm: z.number().nullable() }),
      ),
      hours: z
        .array(z.object({ activity: z.string(), before: z.number(), after: z.number() }))
        .describe('Likely hours with the conditions of the level, before learning.'),
    }),
  })
  .meta({ id: 'RevisionDifference' });
export type PrintedDifference = z.infer<typeof printedDifferenceSchema>;

export function printDifference(difference: RevisionDifference): PrintedDifference {
  const { length, facts, pieces, joints, supports, taps, reopened } = difference;
  return {
    lengthMm: { before: toMm(length.before), after: toMm(length.after) },
    facts: facts.map(({ fact, before, after }) => ({ fact, before: printValue(before), after: printValue(after) })),
    pieces: {
      added: pieces.added.map(pieceOf),
      removed: pieces.removed.map(pieceOf),
      moved: pieces.moved.map(both(pieceOf)),
      replaced: pieces.replaced.map(both(pieceOf)),
      same: pieces.same,
    },
    joints: thingsOf(joints),
    supports: thingsOf(supports),
    taps: {
      added: taps.added.map(tapOf),
      removed: taps.removed.map(tapOf),
      moved: taps.moved.map(both(tapOf)),
      changed: taps.changed.map(({ after }) => after.tap.id),
      same: taps.same,
    },
    reopens: {
      joints: reopened.joints.map(pointOf),
      supports: reopened.supports.map(pointOf),
      supportLoads: reopened.loads.map(both(({ at, loadKg }) => ({ atMm: toMm(at), loadKg }))),
      supportRods: reopened.rods,
      turnedOver: reopened.turnedOver,
      insulationTests: [...reopened.insulationTests],
      labels: { joints: reopened.labels.joints.map(pointOf), taps: [...reopened.labels.taps] },
      dropCords: reopened.drops.map((drop) => ({
        tap: drop.tap,
        beforeMm: drop.before === null ? null : toMm(drop.before),
        afterMm: drop.after === null ? null : toMm(drop.after),
      })),
      hours: reopened.hours.map((line) => ({ ...line })),
    },
  };
}

function printValue(of: FactValue): z.infer<typeof value> {
  switch (of.kind) {
    case 'word':
      return of.word;
    case 'length':
      return of.length === null ? null : toMm(of.length);
    case 'weight':
      return of.kg;
    case 'amperes':
      return of.amperes;
    case 'heading':
      return of.degrees;
    case 'place':
      return { xMm: toMm(of.x), yMm: toMm(of.y), zMm: toMm(of.z) };
    case 'crossings':
      return of.crossings.map(({ at, thickness, kind, fireRatingMin }) => ({
        atMm: toMm(at),
        thicknessMm: toMm(thickness),
        kind,
        fireRatingMin,
      }));
  }
}

function both<T, U>(print: (of: T) => U) {
  return ({ before, after }: { readonly before: T; readonly after: T }) => ({
    before: print(before),
    after: print(after),
  });
}

function pieceOf({ index, piece: { kind, hand, from, to } }: PieceAt) {
  return { place: index + 1, kind, hand, fromMm: toMm(from), toMm: toMm(to) };
}

function pointOf({ index, at }: PointAt) {
  return { place: index + 1, atMm: toMm(at) };
}

function tapOf({ tap: { id }, at }: TapAt) {
  return { id, atMm: toMm(at) };
}

function thingsOf({ added, removed, moved, same }: RevisionDifference['joints']) {
  return { added: added.map(pointOf), removed: removed.map(pointOf), moved: moved.map(both(pointOf)), same };
}
