import type { BuswayTypeDocument, JobDocument, RunDocument } from '../../src/document/job-document.ts';
import type { Dice } from './dice.ts';
import { smallJob, smallRun, smallTap, smallType } from './small-jobs.ts';

/** How many places a support may stand at, about: few for every subset, more for the table of pairs. */
export interface SupportSize {
  readonly places: number;
}

const CELL_MM = 250;

/**
 * A run that sections cover at once (stock of one cell, so that its joints lie anywhere), with all that decides where
 * supports go: spacing, overhang, clearances, zones, walls, a grid of the structure, fittings, taps by weight, capacity.
 */
export function supportInstance(dice: Dice, { places }: SupportSize): JobDocument {
  const step = dice.pick([0.5, 1, 1, 2]);
  const cells = Math.max(8, Math.floor(places * step));
  const type = typeFor(dice, cells, step);
  const run = runFor(dice, cells, type);
  const tee = dice.chance(20) ? teed(dice, run, type) : [];
  return smallJob(type, [run, ...tee]);
}

function typeFor(dice: Dice, cells: number, step: number): BuswayTypeDocument {
  const spacing = dice.int(3, Math.max(4, Math.min(12, cells)));
  const leg = { legMm: CELL_MM, ...(dice.chance(70) && { weightKg: dice.int(0, 90) / 10 }) };
  return smallType({
    weightKgPerM: dice.int(20, 200) / 10,
    stockLengthsMm: [dice.int(2, 7), dice.int(3, 9)].map((length) => length * CELL_MM),
    factoryCut: { minMm: CELL_MM, maxMm: 8 * CELL_MM, stepMm: CELL_MM },
    feed: { joins: dice.chance(50), ...(dice.chance(40) && { weightKg: dice.int(10, 150) / 10 }) },
    support: {
      ...(dice.chance(85) && { maxSpacingMm: spacing * CELL_MM + dice.pick([0, 0, 60]) }),
      maxEndOverhangMm: dice.int(1, 3) * CELL_MM - dice.pick([0, 0, 60]),
      jointClearMm: dice.pick([0, 0.4, 0.5, 1]) * CELL_MM,
      stepMm: step * CELL_MM,
      ...(dice.chance(60) && { fittingWithinMm: dice.int(1, 3) * CELL_MM }),
    },
    tap: { jointClearMm: 0 },
    crossing: { jointClearMm: 0, supportClearMm: dice.pick([0, 0.5, 1]) * CELL_MM },
    fittings: { elbow: leg, tee: leg },
  });
}

function runFor(dice: Dice, cells: number, type: BuswayTypeDocument): RunDocument {
  const corner = dice.chance(35) && cells > 16 ? dice.int(7, cells - 7) : null;
  const legs =
    corner === null
      ? [{ lengthMm: cells * CELL_MM, turn: 'none' as const }]
      : [
          { lengthMm: corner * CELL_MM, turn: dice.pick(['left', 'right'] as const) },
          { lengthMm: (cells - corner) * CELL_MM, turn: 'none' as const },
        ];
  const zone = dice.int(0, cells - 1);
  const perSpan = (type.weightKgPerM * (type.support?.maxSpacingMm ?? 1524)) / 1000;
  return smallRun({
    legs,
    noSupport: dice.chance(40)
      ? [{ fromMm: zone * CELL_MM, toMm: Math.min(cells, zone + dice.int(1, 4)) * CELL_MM }]
      : [],
    crossings: dice.chance(25)
      ? [{ atMm: dice.int(2, cells - 2) * CELL_MM, thicknessMm: 100, kind: 'wall' as const }]
      : [],
    ...(dice.chance(25) && {
      structure: { kind: 'grid' as const, pitchMm: dice.int(1, 3) * CELL_MM, offsetMm: dice.int(-4, 4) * 60 },
    }),
    // Never a round figure, so that no load can lie on the limit and be decided by the last bit of a sum.
    ...(dice.chance(60) && { supportCapacityKg: (perSpan * dice.int(30, 220)) / 100 + 0.012345 }),
    taps: Array.from({ length: dice.int(0, 6) }, (_, i) =>
      smallTap(`T${i + 1}`, dice.int(0, cells * 4) * (CELL_MM / 4), {
        ...(dice.chance(80) && { weightKg: dice.int(0, 120) / 10 }),
      }),
    ),
  });
}

/** A branch in the middle of the first leg: its tee stands in the run, and it begins at the tee's face. */
function teed(dice: Dice, parent: RunDocument, type: BuswayTypeDocument): RunDocument[] {
  const cells = Math.round(parent.legs[0]!.lengthMm / CELL_MM);
  if (cells < 12) return [];
  const length = dice.int(7, 16);
  return [
    smallRun({
      id: 'R1-B',
      feed: { kind: 'tee', fromRun: parent.id, atMm: dice.int(5, cells - 6) * CELL_MM, branchSide: 'left' },
      legs: [{ lengthMm: length * CELL_MM + type.fittings!.tee!.legMm, turn: 'none' }],
    }),
  ];
}
