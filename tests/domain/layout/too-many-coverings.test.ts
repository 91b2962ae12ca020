import { describe, expect, it } from 'vitest';
import { contextFor } from '../../../src/domain/layout/context-for.ts';
import { coverings } from '../../../src/domain/layout/coverings.ts';
import { layoutRun } from '../../../src/domain/layout/layout-run.ts';
import type { BuswayType, Run } from '../../../src/domain/model.ts';
import { INCH } from '../../../src/domain/units/length.ts';
import { aJob, feet } from '../../support/job.ts';
import { layoutType, lRun, straightRun } from './l-run.ts';

const CUT = { min: feet(1), max: feet(10), step: INCH / 16 };

describe('coverings past what can be compared in bounded work', () => {
  it('leave the winner alone, as laid out, and say that they were not compared', () => {
    const at = setting(lRun(), layoutType({ factoryCut: CUT }));
    const alone = coverings(at.run, at.context, 10);
    expect(alone).toMatchObject({ compared: false, held: false });
    expect(alone.coverings).toEqual([winnerOf(at)]);
  });

  it('name the same winner as when all of them are compared', () => {
    const at = setting(lRun(), layoutType({ factoryCut: CUT }));
    const all = coverings(at.run, at.context);
    expect(all.compared).toBe(true);
    expect(all.coverings).toHaveLength(3);
    expect(coverings(at.run, at.context, 10).coverings[0]).toEqual(all.coverings[0]);
  });

  // Nothing has a price, so no cut can be left out as dearer: 960 cuts for each of some 300 sums of the stock lengths.
  it('are met by a long run with a free end, fine cuts and no prices', () => {
    const free = straightRun(300, { end: { reach: feet(295), hardStop: feet(300) } });
    const at = setting(free, unpriced(layoutType({ stockLengths: [10, 7, 5, 3].map(feet), factoryCut: CUT })));
    const alone = coverings(at.run, at.context);
    expect(alone.compared).toBe(false);
    expect(alone.coverings).toEqual([winnerOf(at)]);
  });
});

function setting(run: Run, type: BuswayType) {
  return { run, context: contextFor(aJob({ types: [type], runs: [run] }), run) };
}

function winnerOf({ run, context }: ReturnType<typeof setting>) {
  const { ok, length, pieces, joints, cost } = layoutRun(run, context);
  expect(ok).toBe(true);
  const wanted = run.legs.reduce((sum, leg) => sum + leg.length, 0);
  return { length, pieces, joints, cost, away: Math.abs(length - wanted), loss: null };
}

function unpriced(type: BuswayType): BuswayType {
  const none = Object.fromEntries(Object.keys(type.prices).map((name) => [name, null]));
  return { ...type, prices: { ...type.prices, ...none, sections: [] } };
}
