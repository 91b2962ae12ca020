import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runGeometry } from '../../../src/domain/layout/geometry.ts';
import { layOutSupports } from '../../../src/domain/layout/lay-out-supports.ts';
import type { LoadLine } from '../../../src/domain/layout/load-line.ts';
import type { PlacedPiece } from '../../../src/domain/layout/result.ts';
import { sayIn } from '../../../src/domain/layout/say.ts';
import { aJob, aRun, aType, feet } from '../../support/job.ts';
import { bestSupports, type Hanging, loadsOf } from './brute-supports.ts';
import { laidOut, layoutType, straightRun } from './l-run.ts';

describe('the supports that win', () => {
  it('are those that writing out every choice finds: fewest, most even, smallest list', () => {
    fc.assert(
      fc.property(hangings, (drawn) => {
        const hanging = { ...drawn, capacity: null };
        expect(placed(hanging)).toEqual(bestSupports(hanging) ?? []);
      }),
      { numRuns: 1000 },
    );
  });

  it('are those that writing out every choice within the capacity finds', () => {
    fc.assert(
      fc.property(hangings, (hanging) => {
        expect(placed(hanging)).toEqual(bestSupports(hanging) ?? []);
      }),
      { numRuns: 1500 },
    );
  });

  it('beside hangers that stand are the best of all choices that leave every legal one of those where it is', () => {
    fc.assert(
      fc.property(hangings, fc.array(fc.integer({ min: 0, max: 24 }), { maxLength: 4 }), (drawn, standing) => {
        const hanging = { ...drawn, capacity: null };
        const found = placed(hanging, standing);
        // Where they cannot all stay, it is still the best of all choices that leave those that it leaves.
        const left = bestSupports(hanging, standing) === null ? standing.filter((at) => found.includes(at)) : standing;
        expect(found).toEqual(bestSupports(hanging, left) ?? []);
      }),
      { numRuns: 1000 },
    );
  });

  it('carry what the lever rule puts on them', () => {
    fc.assert(
      fc.property(hangings, (drawn) => {
        const hanging = { ...drawn, capacity: null };
        const supports = hung(hanging).supports;
        const loads = loadsOf(
          hanging,
          supports.map((support) => support.at),
        );
        for (const [index, support] of supports.entries()) expect(support.loadKg).toBeCloseTo(loads[index]!, 8);
      }),
    );
  });

  // check-values cover-hangers: ceil(L/5) + 1 on runs of 49, 50, 51 and 100 ft, supports at both ends (NEC 368.30 interval).
  it.each([
    [49, 11],
    [50, 11],
    [51, 12],
    [100, 21],
  ])('of a %i ft run at 5 ft with supports at both ends are %i', (length, count) => {
    const type = layoutType({ stockLengths: [feet(length)], feed: { joins: false, weightKg: 0 } });
    const support = { ...type.support, maxSpacing: feet(5), maxEndOverhang: 0, jointClear: 0 };
    expect(laidOut(straightRun(length), { ...type, support }).supports).toHaveLength(count);
  });
});

function hung(hanging: Hanging, standing: readonly number[] = []) {
  const type = aType({
    support: {
      maxSpacing: hanging.maxSpacing,
      maxEndOverhang: hanging.maxOverhang,
      jointClear: hanging.jointClear,
      step: hanging.step,
      fittingWithin: hanging.fittingWithin,
      source: 'demo',
    },
    crossing: { jointClear: null, supportClear: hanging.crossingClear },
  });
  const run = aRun({
    legs: [{ length: hanging.length, turn: 'none', tapsMustFace: null }],
    noSupport: hanging.zones.map(([from, to]) => ({ from, to, reason: null })),
    crossings: hanging.walls.map((wall) => ({ ...wall, kind: 'wall', fireRatingMin: 0 })),
    structure:
      hanging.offset === 0 ? { kind: 'continuous' } : { kind: 'grid', pitch: hanging.step, offset: hanging.offset },
    supportCapacityKg: hanging.capacity,
  });
  const fittings = hanging.pieces
    .filter((piece) => piece.fitting)
    .map(({ from, to }) => ({ kind: 'tee' as const, from, at: (from + to) / 2, to, hand: null, weightKg: 0 }));
  const pieces = hanging.pieces.map(
    ({ from, to, fitting }): PlacedPiece => ({ from, to, kind: fitting ? 'tee' : 'stock', hand: null }),
  );
  const line: LoadLine = {
    from: 0,
    to: hanging.length,
    spans: hanging.pieces.map(({ from, to, kg }) => ({ from, to, kgPerUnit: kg / (to - from) })),
    points: hanging.points,
  };
  const setting = { run, type, pieces, fittings, joints: hanging.joints.map((at) => ({ at })) };
  return layOutSupports(setting, runGeometry(run, null), aJob().project, line, sayIn('metric'), standing);
}

function placed(hanging: Hanging, standing: readonly number[] = []): number[] {
  return hung(hanging, standing).supports.map((support) => support.at);
}

const piece = fc.record({
  length: fc.integer({ min: 2, max: 6 }),
  fitting: fc.boolean(),
  kg: fc.integer({ min: 1, max: 12 }),
});
const hangings: fc.Arbitrary<Hanging> = fc
  .record({
    pieces: fc.array(piece, { minLength: 1, maxLength: 4 }),
    step: fc.integer({ min: 1, max: 2 }),
    offset: fc.integer({ min: 0, max: 1 }),
    maxSpacing: fc.integer({ min: 3, max: 8 }),
    maxOverhang: fc.integer({ min: 1, max: 4 }),
    jointClear: fc.integer({ min: 0, max: 2 }),
    fittingWithin: fc.option(fc.integer({ min: 1, max: 4 })),
    crossingClear: fc.integer({ min: 0, max: 1 }),
    capacity: fc.option(fc.integer({ min: 4, max: 20 }), { freq: 6 }),
    zones: fc.array(fc.tuple(fc.integer({ min: 0, max: 14 }), fc.integer({ min: 1, max: 4 })), { maxLength: 2 }),
    walls: fc.array(fc.record({ at: fc.integer({ min: 1, max: 14 }), thickness: fc.integer({ min: 1, max: 3 }) }), {
      maxLength: 1,
    }),
    points: fc.array(fc.record({ at: fc.integer({ min: 0, max: 14 }), kg: fc.integer({ min: 1, max: 8 }) }), {
      maxLength: 3,
    }),
  })
  .map(({ pieces, zones, points, ...rest }) => {
    const ends = pieces.map((_, i) => pieces.slice(0, i + 1).reduce((sum, one) => sum + one.length, 0));
    const length = Math.min(ends.at(-1)!, 16);
    const kept = pieces
      .map(({ fitting, kg, length: own }, i) => ({ from: ends[i]! - own, to: Math.min(ends[i]!, length), fitting, kg }))
      .filter((one) => one.from < one.to);
    return {
      ...rest,
      length,
      pieces: kept,
      joints: kept.slice(1).map((one) => one.from),
      zones: zones.map(([from, width]) => [from, from + width] as const),
      points: points.filter((point) => point.at <= length).sort((a, b) => a.at - b.at),
    };
  });
