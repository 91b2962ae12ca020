import { describe, expect, it } from 'vitest';
import { smallJob, smallRun, smallTap, smallType } from '../../scripts/proof/small-jobs.ts';
import type { BuswayTypeDocument } from '../../src/document/job-document.ts';
import { scenarioT1 } from '../support/scenarios.ts';
import { beamReactions } from './reference/beam.ts';
import { simpleSpanLoad } from './reference/loads.ts';
import { referenceCovering } from './reference/sections.ts';
import { fewestSticksBySubsets } from './reference/sticks.ts';
import { bestByPairs, bestBySubsets, type SupportProblem, supportProblem } from './reference/supports.ts';

// The references themselves, on cases that can be checked with a pencil: a reference that is wrong proves nothing.
const mm = (units: number) => units / 80;

describe('coverings written out', () => {
  const lengths = (
    type: Partial<BuswayTypeDocument>,
    lengthMm: number,
    end?: { reachMm: number; hardStopMm: number },
  ) => {
    const job = smallJob(smallType(type), [smallRun({ legs: [{ lengthMm, turn: 'none' }], ...(end && { end }) })]);
    return referenceCovering(job, job.runs[0]!)?.sections.map(({ from, to }) => mm(to - from));
  };

  it('take fewer joints where nothing has a price, and the longer piece nearer the feed', () => {
    expect(lengths({ stockLengthsMm: [1000, 2000, 3000] }, 5000)).toEqual([3000, 2000]);
  });

  it('take more joints where those pieces are cheaper', () => {
    const prices = { sections: [{ lengthMm: 3000, price: 900 }] };
    expect(lengths({ stockLengthsMm: [1000, 3000], prices }, 3000)).toEqual([1000, 1000, 1000]);
  });

  it('are none where stock cannot make the length, and one with a cut where the type is cut', () => {
    expect(lengths({ stockLengthsMm: [2000] }, 3000)).toBeUndefined();
    const factoryCut = { minMm: 500, maxMm: 1500, stepMm: 500 };
    expect(lengths({ stockLengthsMm: [2000], factoryCut }, 3000)).toEqual([2000, 1000]);
  });

  it('end where it costs least, and nearest to the length where that costs the same', () => {
    const prices = { sectionPerM: 1000 };
    expect(lengths({ stockLengthsMm: [1000] }, 3000, { reachMm: 2000, hardStopMm: 4000 })).toEqual([1000, 1000, 1000]);
    expect(lengths({ stockLengthsMm: [1000], prices }, 3000, { reachMm: 2000, hardStopMm: 4000 })).toEqual([
      1000, 1000,
    ]);
  });

  it('go round the corner and through the wall of scenario T1 as the scenario says: 20/10/20/10, then 20/10/5', () => {
    const job = scenarioT1();
    const covering = referenceCovering(job, job.runs[0]!)!;
    const feet = covering.sections.map(({ from, to, kind }) => (kind === 'elbow' ? 'elbow' : mm(to - from) / 304.8));
    expect(feet).toEqual([20, 10, 20, 10, 'elbow', 20, 10, 5]);
    expect(covering.joints).toHaveLength(8);
  });
});

describe('supports by subsets and by pairs', () => {
  const problem = (changes: Partial<SupportProblem>): SupportProblem => ({
    length: 10,
    places: [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10],
    maxSpacing: 4,
    maxEndOverhang: 1,
    windows: [],
    weights: { length: 10, spread: [{ from: 0, to: 10, kg: 10 }], points: [] },
    capacityKg: null,
    ...changes,
  });
  const both = (changes: Partial<SupportProblem>) => [bestBySubsets(problem(changes)), bestByPairs(problem(changes))];

  it('stand evenly, and the smaller list wins where two are even', () => {
    expect(both({})).toEqual([
      [1, 5, 9],
      [1, 5, 9],
    ]);
    expect(both({ maxSpacing: 9 })).toEqual([
      [1, 9],
      [1, 9],
    ]);
  });

  it('are none where a blocked stretch is wider than the spacing', () => {
    expect(both({ places: [0, 1, 2, 7, 8, 9, 10] })).toEqual([null, null]);
  });

  it('become more where two would carry too much', () => {
    const held = both({ maxSpacing: 9, capacityKg: 4.5 });
    expect(held).toEqual([
      [1, 5, 9],
      [1, 5, 9],
    ]);
  });

  it('of scenario T1, on steps of 3 in, are 7 and 5, as the scenario says', () => {
    const job = scenarioT1();
    const { joints, sections } = referenceCovering(job, job.runs[0]!)!;
    const [type] = job.buswayTypes;
    const coarse = { ...job, buswayTypes: [{ ...type!, support: { ...type!.support, stepMm: 76.2 } }] };
    const best = bestByPairs(supportProblem(coarse, job.runs[0]!, sections.at(-1)!.to, joints))!;
    expect([best.filter((at) => mm(at) < 61 * 304.8).length, best.length]).toEqual([7, 12]);
  });
});

describe('loads on supports', () => {
  const uniform = { length: 2 * 80_000, spread: [{ from: 0, to: 2 * 80_000, kg: 20 }], points: [] };

  it('by simple spans are half of each neighbouring span', () => {
    expect(simpleSpanLoad(uniform, 0, 80_000, 160_000)).toBeCloseTo(10, 12);
    expect(simpleSpanLoad(uniform, null, 0, 80_000)).toBeCloseTo(5, 12);
  });

  it('by simple spans share a tap by the lever rule', () => {
    const tap = { ...uniform, spread: [], points: [{ at: 20_000, kg: 8 }] };
    expect(simpleSpanLoad(tap, null, 0, 80_000)).toBeCloseTo(6, 12);
    expect(simpleSpanLoad(tap, 0, 80_000, null)).toBeCloseTo(2, 12);
  });

  // Two and three equal spans under an even load: 3/8, 5/4, 3/8 and 2/5, 11/10, 11/10, 2/5 of wL. Source: Hicks, Civil
  // Engineering Formulas, table 2.1.
  it('as a continuous beam over two and three equal spans are the table’s', () => {
    const [a, b, c] = beamReactions(uniform, [0, 80_000, 160_000]);
    expect([a! / 10, b! / 10, c! / 10].map((share) => share.toFixed(9))).toEqual([
      '0.375000000',
      '1.250000000',
      '0.375000000',
    ]);
    const three = { length: 240_000, spread: [{ from: 0, to: 240_000, kg: 30 }], points: [] };
    const shares = beamReactions(three, [0, 80_000, 160_000, 240_000]).map((kg) => (kg / 10).toFixed(9));
    expect(shares).toEqual(['0.400000000', '1.100000000', '1.100000000', '0.400000000']);
  });

  it('of an overhang lift the next support, as the lever does', () => {
    const line = { length: 80_000, spread: [], points: [{ at: 0, kg: 10 }] };
    const [first, second] = beamReactions(line, [20_000, 60_000]);
    expect(first).toBeCloseTo(15, 9);
    expect(second).toBeCloseTo(-5, 9);
  });
});

it('sticks by subsets: 12 rods of 6.75 ft take 12 sticks of 10 ft, and 3 + 3 + 2 + 2 fill a stick of ten', () => {
  expect(fewestSticksBySubsets(10, Array(12).fill(6.75))).toBe(12);
  expect(fewestSticksBySubsets(10, [3, 3, 2, 2])).toBe(1);
  expect(fewestSticksBySubsets(10, [6, 6, 4, 3])).toBe(2);
});

it('an instance of a proof with a tap reads its distance from the feed', () => {
  const job = smallJob(smallType({}), [
    smallRun({ legs: [{ lengthMm: 3000, turn: 'none' }], taps: [smallTap('T1', 1000)] }),
  ]);
  const { weights } = supportProblem(
    { ...job, buswayTypes: [smallType({ support: { maxEndOverhangMm: 600 } })] },
    job.runs[0]!,
    240_000,
    [],
  );
  expect(weights.points.map(({ at }) => mm(at))).toEqual([0, 1000]);
});
