import { describe, expect, test } from 'vitest';
import {
  aJob,
  aRun,
  aTap,
  aType,
  checksOf,
  firstRun,
  type JsonObject,
  jobOf,
  leg,
  printed,
  supportsOf,
} from './job-text.ts';

const SUPPORT = { maxSpacingMm: 3000, maxEndOverhangMm: 600, jointClearMm: 0, stepMm: 50, fittingWithinMm: 10_000 };
/** One section of the whole length, so that no joint stands in the way. */
const whole = (lengthMm: number, support: JsonObject = {}, run: JsonObject = {}, type: JsonObject = {}) =>
  printed(
    jobOf(
      aType({ stockLengthsMm: [lengthMm], support: { ...SUPPORT, ...support }, ...type }),
      aRun({ legs: [leg(lengthMm)], ...run }),
    ),
  );
const places = (...args: Parameters<typeof whole>) => supportsOf(whole(...args).runs[0]!);
const loads = (...args: Parameters<typeof whole>) =>
  whole(...args).runs[0]!.layout.supports.map(({ loadKg }) => loadKg);
const beam = (...args: Parameters<typeof whole>) =>
  whole(...args).runs[0]!.layout.supports.map(({ continuousLoadKg }) => continuousLoadKg);

describe('"fewest; then the least sum of squared gaps; then the lexicographically smallest list"', () => {
  test('6 m at 3 m needs three, the gaps as short as the overhang allows: overhangs are not gaps', () => {
    expect(places(6000)).toEqual([600, 3000, 5400]);
  });
  test('two supports where spacing and overhangs just reach: 600 + 3000 + 600', () => {
    expect(places(4200)).toEqual([600, 3600]);
    expect(places(4250)).toHaveLength(3);
  });
  // 1000..6000 apart in three: gaps of 2000 + 3000 or 3000 + 2000 on a step of 1000, equal squares.
  test('equal squares: the smaller list', () => {
    expect(places(7000, { stepMm: 1000, maxEndOverhangMm: 1000 })).toEqual([1000, 3000, 6000]);
  });
  test('one support serves a run that overhangs it on both sides', () => {
    expect(places(1000)).toEqual([400]);
    expect(places(1200)).toEqual([600]);
  });
  test('no overhang: a support at each end', () => {
    expect(places(3000, { maxEndOverhangMm: 0 })).toEqual([0, 3000]);
  });
});

describe('"Candidates: multiples of stepMm from 0, or the structure\'s grid"', () => {
  test('the step is 50 mm in a metric project and 25.4 mm in one of feet and inches', () => {
    const type = aType({ stockLengthsMm: [2032], support: { ...SUPPORT, maxEndOverhangMm: 635, stepMm: undefined } });
    const job = jobOf(type, aRun({ legs: [leg(2032)] }));
    expect(supportsOf(firstRun(job))).toEqual([600, 1400]);
    const inches = { ...job, project: { ...(job.project as JsonObject), units: 'ft-in' } };
    // 635 mm is 25 in; 2032 mm is 80 in, so the last may stand at 55 in = 1397 mm at the earliest.
    expect(supportsOf(firstRun(inches))).toEqual([635, 1397]);
  });
  test('a grid of 1200 from 300; one from -300 begins at 900, and it goes on both ways from its offset', () => {
    const grid = (offsetMm: number) => ({ structure: { kind: 'grid', pitchMm: 1200, offsetMm } });
    expect(places(4800, { maxEndOverhangMm: 1000 }, grid(300))).toEqual([300, 1500, 3900]);
    expect(places(4800, { maxEndOverhangMm: 1000 }, grid(-300))).toEqual([900, 2100, 4500]);
    expect(places(4800, { maxEndOverhangMm: 1000 }, grid(900 + 5 * 1200))).toEqual([900, 2100, 4500]);
  });
  test('a structure that is continuous is the step again', () => {
    expect(places(6000, {}, { structure: { kind: 'continuous' } })).toEqual([600, 3000, 5400]);
  });
});

describe('clearances of supports: "a distance equal to a limit passes"', () => {
  test('jointClearMm from every joint', () => {
    const run = (jointClearMm: number) =>
      supportsOf(firstRun(jobOf(aType({ stockLengthsMm: [3000], support: { ...SUPPORT, jointClearMm } }), aRun())));
    expect(run(50)).toEqual([600, 2950, 5400]);
    expect(run(50.0125)).toEqual([600, 2900, 5400]);
  });
  test('the joint of a joined feed counts too', () => {
    const type = { feed: { joins: true, weightKg: 0 } };
    expect(places(1000, { jointClearMm: 600 }, {}, type)).toEqual([600]);
    expect(whole(1000, { jointClearMm: 600.0125 }, {}, type).checks.map(({ rule }) => rule)).toContain(
      'support.blocked',
    );
  });
  test('noSupport zones and crossings by their faces', () => {
    const zone = (fromMm: number, toMm: number) => ({ noSupport: [{ fromMm, toMm, reason: 'duct' }] });
    expect(places(6000, {}, zone(2900, 3100))).toEqual([600, 2900, 5400]);
    expect(places(6000, {}, zone(3000, 3100))).toEqual([600, 3000, 5400]);
    const crossing = { crossings: [{ atMm: 3000, thicknessMm: 100, kind: 'wall' }] };
    const type = (supportClearMm: number) => ({ crossing: { jointClearMm: 0, supportClearMm } });
    expect(places(6000, {}, crossing, type(100))).toEqual([600, 2850, 5400]);
    expect(places(6000, {}, crossing, type(101))).toEqual([600, 2800, 5400]);
  });
  test('a blocked zone wider than the spacing has no answer: support.blocked, sections stay', () => {
    const figures = whole(6000, {}, { noSupport: [{ fromMm: 1000, toMm: 4000.0125 }] });
    expect(figures.runs[0]!.layout).toMatchObject({ ok: true, supports: [] });
    expect(checksOf(figures, 'support.blocked')).toMatchObject([{ severity: 'stop', run: 'R' }]);
    expect(supportsOf(whole(5000, {}, { noSupport: [{ fromMm: 1000, toMm: 4000 }] }).runs[0]!)).toContain(1000);
  });
});

describe('fittingWithinMm: a support within the distance of each face, on that arm', () => {
  const elbow = (fittingWithinMm: number | undefined) =>
    supportsOf(
      firstRun(
        jobOf(aType({ support: { ...SUPPORT, fittingWithinMm } }), aRun({ legs: [leg(3300, 'left'), leg(3300)] })),
      ),
    );
  test('600 of the faces at 3000 and 3600 takes one more support than none', () => {
    expect(elbow(undefined)).toEqual([600, 3300, 6000]);
    // One in 2400..3000 and one in 3600..4200, first at 600 and last at 6000: squares least at 2400 and 4200.
    expect(elbow(600)).toEqual([600, 2400, 4200, 6000]);
  });
  test("a branch begins at its tee's face", () => {
    const type = aType({ support: { ...SUPPORT, fittingWithinMm: 200 } });
    const branch = aRun({
      id: 'B',
      feed: { kind: 'tee', fromRun: 'R', atMm: 3300, branchSide: 'left' },
      legs: [leg(3300)],
    });
    const figures = printed(jobOf(type, aRun({ legs: [leg(6600)] }), branch));
    expect(supportsOf(figures.runs[1]!)[0]).toBe(200);
  });
});

describe('loads: "half the busway of each neighbouring span, each tap by the lever rule"; 10 kg/m', () => {
  test('600 of overhang and half of 2400; the middle half of both', () => {
    expect(loads(6000)).toEqual([18, 24, 18]);
  });
  test('12 kg at a quarter of a span: three quarters and one', () => {
    expect(loads(6000, {}, { taps: [aTap('A', 1200, { weightKg: 12 })] })).toEqual([27, 27, 18]);
  });
  test('a tap on an overhang and the feed hang on the end support', () => {
    expect(loads(6000, {}, { taps: [aTap('A', 6000, { weightKg: 12 })] })).toEqual([18, 24, 30]);
    expect(loads(6000, {}, {}, { feed: { joins: false, weightKg: 9 } })).toEqual([27, 24, 18]);
  });
  test('a tap over a support hangs on it alone', () => {
    expect(loads(6000, {}, { taps: [aTap('A', 3000, { weightKg: 12 })] })).toEqual([18, 36, 18]);
  });
  test("a centre feed's weight hangs where it stands", () => {
    const type = aType({ feed: { joins: false, weightKg: 12 } });
    const run = firstRun(jobOf(type, aRun({ feed: { kind: 'centre', atMm: 3000 } })));
    expect(run.layout.supports.map(({ loadKg }) => loadKg)).toEqual([18, 36, 18]);
  });
  test("a branch carries no feed, and an elbow's weight spreads over its legs", () => {
    const type = aType({ feed: { joins: false, weightKg: 9 }, fittings: { elbow: { legMm: 300, weightKg: 12 } } });
    const run = firstRun(jobOf(type, aRun({ legs: [leg(3300, 'left'), leg(3300)] })));
    // 600, 3300, 6000: 9 + 6 + 13.5 less what the elbow's 300 mm differ: 3 kg of busway gone, 6 kg of elbow come.
    // Elbow half on each side of the corner: centroid 150 mm from it, lever 150/2700 outward.
    const outward = (6 - 3) * (150 / 2700);
    const inward = (6 - 3) * (1 - 150 / 2700);
    expect(run.layout.supports.map(({ loadKg }) => loadKg)).toEqual(
      [9 + 6 + 13.5 + outward, 27 + 2 * inward, 6 + 13.5 + outward].map((load) => Math.round(load * 1000) / 1000),
    );
  });
});

describe('continuousLoadKg: published coefficients of equal spans (handbook tables of continuous beams)', () => {
  test('two spans: 3/8, 5/4, 3/8 of w·l', () => {
    expect(beam(4000, { maxSpacingMm: 2000, maxEndOverhangMm: 0 })).toEqual([7.5, 25, 7.5]);
  });
  test('three spans: 0.4, 1.1, 1.1, 0.4 of w·l', () => {
    expect(beam(6000, { maxSpacingMm: 2000, maxEndOverhangMm: 0 })).toEqual([8, 22, 22, 8]);
  });
  // A worked example of hanger reactions: 117.68 and 323.62 N at 9.80665 m/s².
  test('20 kg/m hung every 1.5 m over three spans: 12 and 33 kg', () => {
    expect(beam(4500, { maxSpacingMm: 1500, maxEndOverhangMm: 0 }, {}, { weightKgPerM: 20 })).toEqual([12, 33, 33, 12]);
  });
  test('one span with overhangs and one support alone are statics', () => {
    expect(beam(4200)).toEqual([21, 21]);
    expect(beam(1200)).toEqual([12]);
  });
  test('12 kg at the end of an overhang of 600 beyond one span of 3000: 12·3.6/3 and 12·0.6/3', () => {
    expect(beam(4200, {}, { taps: [aTap('A', 0, { weightKg: 12 })] })).toEqual([35.4, 18.6]);
  });
});

describe('supportCapacityKg', () => {
  test('the capacity is held by simple spans: more supports where fewer would carry too much', () => {
    // Three would carry 18, 24, 18; four at gaps of 1600 carry at most 16 within.
    expect(places(6000, {}, { supportCapacityKg: 40 })).toEqual([600, 3000, 5400]);
    expect(places(6000, {}, { supportCapacityKg: 23.9 })).toHaveLength(4);
  });
  test('a load equal to the capacity passes by simple spans', () => {
    expect(places(6000, {}, { supportCapacityKg: 24 })).toEqual([600, 3000, 5400]);
  });
  test('the continuous beam above it is a stop that leaves the supports: 27.75 over 24', () => {
    const figures = whole(6000, {}, { supportCapacityKg: 24 });
    expect(checksOf(figures, 'support.load')).toMatchObject([{ severity: 'stop', run: 'R', atMm: 3000 }]);
    expect(checksOf(figures, 'support.load')[0]!.message).toMatch(/27\.75|27\.8/);
    expect(checksOf(whole(6000, {}, { supportCapacityKg: 27.75 }), 'support.load')).toEqual([]);
  });
  test('a second search that does not hold either is not recommended', () => {
    const [check] = checksOf(whole(6000, {}, { supportCapacityKg: 5 }), 'support.load');
    expect(check!.message).toMatch(/does not hold either/);
    expect(checksOf(whole(6000, {}, { supportCapacityKg: 24 }), 'support.load')[0]!.message).toMatch(
      /enter that capacity/,
    );
  });
  test('what no layout can carry is a stop support.load', () => {
    const figures = whole(6000, {}, { supportCapacityKg: 10, taps: [aTap('A', 3000, { weightKg: 50 })] });
    expect(checksOf(figures, 'support.load')).toMatchObject([{ severity: 'stop' }]);
    expect(figures.runs[0]!.layout).toMatchObject({ ok: true });
  });
});

describe('"Absent limits"', () => {
  const support = (limits: JsonObject, codeBasis: string) => {
    const type = aType({ stockLengthsMm: [3000], support: limits });
    return printed(aJob({ buswayTypes: [type], runs: [aRun({ legs: [leg(3000)] })] }, { codeBasis }));
  };
  const rest = { jointClearMm: 0, stepMm: 50, fittingWithinMm: 0 };

  test('"support spacing on the NEC basis is 1 524 mm (368.30) with a note"', () => {
    const figures = support({ ...rest, maxEndOverhangMm: 600 }, 'NEC');
    expect(supportsOf(figures.runs[0]!)).toEqual([600, 1500, 2400]);
    const notes = figures.checks.filter(({ severity, source }) => severity === 'note' && source.includes('368.30'));
    expect(notes).toHaveLength(1);
    expect(notes[0]!.message).toContain('1.524 m');
  });
  test('the default binds: 3048 + 2 x 600 needs three gaps of no more than 1524', () => {
    const at = (lengthMm: number) =>
      supportsOf(
        printed(
          jobOf(
            aType({ stockLengthsMm: [lengthMm], support: { ...rest, stepMm: 1, maxEndOverhangMm: 600 } }),
            aRun({ legs: [leg(lengthMm)] }),
          ),
        ).runs[0]!,
      );
    expect(at(3048 + 1200)).toEqual([600, 2124, 3648]);
    expect(at(3049 + 1200)).toHaveLength(4);
  });
  test('"on the IEC basis, and an absent end overhang on either, no supports are laid out: stop limit.unknown"', () => {
    for (const [limits, basis] of [
      [{ ...rest, maxEndOverhangMm: 600 }, 'IEC'],
      [{ ...rest, maxSpacingMm: 3000 }, 'IEC'],
      [{ ...rest, maxSpacingMm: 3000 }, 'NEC'],
      [rest, 'NEC'],
    ] as const) {
      const figures = support(limits, basis);
      expect(figures.runs[0]!.layout).toMatchObject({ ok: true, supports: [] });
      expect(checksOf(figures, 'limit.unknown')).toMatchObject([{ severity: 'stop', run: 'R' }]);
    }
  });
  test('a spacing over 1524 without its source is a warning support.source on the NEC basis only', () => {
    const source = (limits: JsonObject, basis: string) =>
      checksOf(support({ ...rest, ...limits }, basis), 'support.source');
    expect(source({ maxSpacingMm: 3000, maxEndOverhangMm: 600 }, 'NEC')).toMatchObject([{ severity: 'warning' }]);
    expect(source({ maxSpacingMm: 3000, maxEndOverhangMm: 600, source: 'sheet, p. 4' }, 'NEC')).toEqual([]);
    expect(source({ maxSpacingMm: 1524, maxEndOverhangMm: 600 }, 'NEC')).toEqual([]);
    expect(source({ maxSpacingMm: 3000, maxEndOverhangMm: 600 }, 'IEC')).toEqual([]);
  });
  test('"any other absent limit binds nothing, and gives a warning limit.unknown each"', () => {
    const bare = (key: string, without?: string) => {
      const limits = { ...(aType()[key] as JsonObject) };
      if (without !== undefined) delete limits[without];
      return checksOf(
        printed(
          jobOf(
            aType({ [key]: limits }),
            aRun({
              legs: [leg(3300, 'left'), leg(3300)],
              crossings: [{ atMm: 1000, thicknessMm: 100, kind: 'wall' }],
              taps: [aTap('A', 500), aTap('B', 2000)],
            }),
          ),
        ),
        'limit.unknown',
      ).map(({ severity }) => severity);
    };
    for (const limit of ['jointClearMm', 'fittingWithinMm'])
      expect([limit, bare('support', limit)]).toEqual([limit, ['warning']]);
    for (const limit of ['jointClearMm', 'endClearMm', 'minSpacingMm', 'boxLengthMm']) {
      expect([limit, bare('tap', limit)]).toEqual([limit, ['warning']]);
    }
    for (const limit of ['jointClearMm', 'supportClearMm'])
      expect([limit, bare('crossing', limit)]).toEqual([limit, ['warning']]);
    expect(bare('tap')).toEqual([]);
  });
  test('an absent weight counts 0 with a warning of its own: it is no limit', () => {
    const type = aType({ feed: {}, fittings: { elbow: { legMm: 300 } } });
    const run = aRun({ legs: [leg(3300, 'left'), leg(3300)], taps: [aTap('A', 1000, { weightKg: undefined })] });
    const figures = printed(jobOf(type, run));
    expect(checksOf(figures, 'weight.unknown').map(({ severity }) => severity)).toEqual([
      'warning',
      'warning',
      'warning',
    ]);
    expect(checksOf(figures, 'limit.unknown')).toEqual([]);
  });
  test('an absent support capacity is one too', () => {
    const figures = printed(jobOf(aType(), aRun({ supportCapacityKg: undefined })));
    expect(checksOf(figures, 'limit.unknown')).toMatchObject([{ severity: 'warning', run: 'R' }]);
  });
});
