import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { demoJob } from '../../../src/document/demo/demo-job.ts';
import type { JobDocument } from '../../../src/document/job-document.ts';
import { toModel } from '../../../src/document/to-model.ts';
import { applyWhatIf } from '../../../src/document/what-if/apply-what-if.ts';
import { beside } from '../../../src/document/what-if/beside.ts';
import { readWhatIf } from '../../../src/document/what-if/form.ts';
import type { WhatIf } from '../../../src/document/what-if/schema.ts';
import { figures } from '../../../src/domain/figures.ts';

const demo = demoJob();
const job = toModel(demo);
const base = { job, figures: figures(job) };
const written = JSON.stringify(demo);

function ask(change: WhatIf) {
  const applied = applyWhatIf(demo, change);
  if (!applied.ok) throw new Error(JSON.stringify(applied.faults));
  return { document: applied.document, ...beside(base, applied.document, null, applied.touched) };
}
const faultsOf = (change: WhatIf) => {
  const applied = applyWhatIf(demo, change);
  return applied.ok ? [] : applied.faults;
};
/** Worked from the start, all runs laid out anew. */
const whole = (document: JobDocument) => figures(toModel(document));
const [first] = demo.runs;
const straight = demo.runs.find((run) => run.legs.length === 1 && run.feed.kind === 'end')!;
const types = demo.buswayTypes.map(({ id }) => id);

const CHANGES: readonly (readonly [string, WhatIf])[] = [
  ['a tight ceiling on every level', { conditions: [{ level: null, congestion: 'tight' }] }],
  ['one level beside equipment in service', { conditions: [{ level: demo.levels[0]!.id, liveArea: true }] }],
  ['a height of 5 m', { conditions: [{ level: null, mountingHeightMm: 5_000 }] }],
  ['factors that compound', { policy: 'compound', conditions: [{ level: null, congestion: 'tight', liveArea: true }] }],
  ['no learning', { learning: 'none' }],
  ['another curve', { learning: { rate: 0.9 } }],
  ['other percentages', { factors: { tightPercent: 50, livePercent: 40, storeyPercentEach: 2, normalPercent: 20 } }],
  ['another share of time lost', { nonProductivePercent: 12 }],
  [
    'another labour unit',
    {
      activities: [
        { activity: 'joint', likely: 0.9 },
        { activity: 'section', likely: 1.2 },
      ],
    },
  ],
  ['shorter sections alone', { stock: [{ type: types[0]!, lengthsMm: [3048, 1524] }] }],
  ['a leg 2 ft longer', { routes: [{ run: straight.id, legsMm: [straight.legs[0]!.lengthMm + 609.6] }] }],
  ['another rod', { routes: [{ run: first!.id, dropMm: 900 }] }],
];

describe('a change beside the base', () => {
  test.each(CHANGES)(
    '%s: what is laid out anew where it matters is what comes of laying out everything anew',
    (_what, change) => {
      const { document, changed } = ask(change);
      const anew = whole(document);
      expect(changed.hours?.likely).toBeCloseTo(anew.labour!.range.likely, 9);
      expect(changed.hours?.p80).toBeCloseTo(anew.labour!.range.p80, 9);
      expect(changed.price).toBe(anew.bid?.price ?? null);
      expect(changed.leftOut).toEqual(anew.layouts.filter((layout) => !layout.ok).map(({ run }) => run));
      expect(JSON.stringify(demo)).toBe(written);
    },
  );

  test('nothing asked is nothing changed, in every figure', () => {
    const { base: was, changed, things } = ask({});
    expect(changed).toEqual(was);
    expect(things).toEqual([]);
  });

  test('a ceiling from normal to tight moves the work that feels it by what the book says, and tests by nothing', () => {
    const hours = (change: WhatIf, activity: string) =>
      ask(change).changed.byActivity.find((one) => one.activity === activity)!.hours;
    const normal: WhatIf = {
      conditions: [{ level: null, congestion: 'normal', mountingHeightMm: 3_000 }],
      factors: { storeyPercentEach: 0 },
    };
    const tight: WhatIf = {
      conditions: [{ level: null, congestion: 'tight', mountingHeightMm: 3_000 }],
      factors: { storeyPercentEach: 0 },
    };
    expect(hours(tight, 'joint') / hours(normal, 'joint')).toBeCloseTo(1.35 / 1.15, 12);
    expect(hours(tight, 'test-insulation')).toBe(hours(normal, 'test-insulation'));
  });

  test('a labour unit moves all three points and the hours by length in one proportion', () => {
    const { document } = ask({ activities: [{ activity: 'section', likely: 2 }] });
    const before = demo.labourBook!.activities.section!;
    const after = document.labourBook!.activities.section!;
    for (const [a, b] of [
      [before, after],
      ...before.bands!.map((band, i) => [band, after.bands![i]!] as const),
    ] as const)
      for (const point of ['low', 'likely', 'high'] as const) expect(b[point]).toBeCloseTo(2 * a[point], 12);
  });

  test('shorter sections are more joints: the things that differ are told in number', () => {
    const { things, base: was, changed } = ask({ stock: [{ type: types[0]!, lengthsMm: [3048, 1524] }] });
    const clamps = things.find(({ thing }) => thing.item === 'clamp')!;
    expect(clamps.after).toBeGreaterThan(clamps.before);
    expect(things.every(({ before, after }) => before !== after)).toBe(true);
    expect(changed.hours!.likely).toBeGreaterThan(was.hours!.likely);
  });

  test('a share of time in place of hours of the day never counts beside them', () => {
    const daily: JobDocument = {
      ...demo,
      labourBook: { ...demo.labourBook!, nonProductivePercent: 0, nonProductiveDay: { lostHours: 1, dayHours: 8 } },
    };
    const applied = applyWhatIf(daily, { nonProductivePercent: 10 });
    expect(applied.ok && applied.document.labourBook).toMatchObject({ nonProductivePercent: 10 });
    expect(applied.ok && applied.document.labourBook?.nonProductiveDay).toBeUndefined();
  });
});

test('what the job does not have is told, all at once, with what it has', () => {
  const faults = faultsOf({
    conditions: [{ level: 'F99', congestion: 'open' }],
    activities: [{ activity: 'joints', likely: 1 }],
    types: [{ from: types[0]!, to: 'other', level: null }],
    routes: [{ run: 'nowhere' }, { run: straight.id, legsMm: [1_000, 2_000] }],
  });
  expect(faults.map(({ path }) => path)).toEqual([
    'conditions[0].level',
    'activities[0].activity',
    'types[0].to',
    'routes[0].run',
    'routes[1].legsMm',
  ]);
  expect(faults.at(-1)?.message).toBe(`${straight.id} has 1 leg, and 2 lengths are given.`);
  expect(faults.every(({ remedy }) => remedy !== '')).toBe(true);
});

test('doubling what is hung doubles the hours, where nobody learns: twice the same floors', () => {
  // A level and its copy, each a job of its own, whatever the conditions: no learning, so that no repeat is cheaper.
  const level = demo.levels[1]!;
  const runs = demo.runs.filter((run) => run.level === level.id).slice(0, 4);
  const plain = { ...demo.labourBook!, learning: undefined, trials: 200 };
  const of = (copies: number, conditions: NonNullable<JobDocument['levels'][number]['conditions']>): JobDocument => {
    const { learning: _none, ...labourBook } = plain;
    const all = Array.from({ length: copies }, (_, i) => i);
    const { bid: _bid, extras: _extras, ...rest } = demo;
    return {
      ...rest,
      labourBook,
      levels: all.map((i) => ({ ...level, id: `L${i}`, name: `L${i}`, order: i, conditions })),
      runs: all.flatMap((i) =>
        runs.map((run) => ({ ...run, id: `${i}-${run.id}`, level: `L${i}`, pairedRun: `${i}-${run.pairedRun}` })),
      ),
    };
  };
  const conditions = fc.record({
    mountingHeightMm: fc.integer({ min: 2_000, max: 8_000 }),
    congestion: fc.constantFrom('open' as const, 'normal' as const, 'tight' as const),
    liveArea: fc.boolean(),
    storeysAboveGrade: fc.integer({ min: 0, max: 40 }),
  });
  fc.assert(
    fc.property(conditions, fc.integer({ min: 2, max: 3 }), (any, times) => {
      const once = whole(of(1, any)).labour!;
      const many = whole(of(times, any)).labour!;
      expect(many.range.likely).toBeCloseTo(times * once.range.likely, 8);
      expect(many.range.mean).toBeCloseTo(times * once.range.mean, 8);
      for (const { activity, hours, quantity } of once.byActivity)
        expect(many.byActivity.find((one) => one.activity === activity)).toEqual({
          activity,
          hours: expect.closeTo(times * hours, 8),
          quantity: expect.closeTo(times * quantity, 8),
        });
    }),
    { seed: 5, numRuns: 12 },
  );
});

describe('the form', () => {
  test('texts become the change, rows that are empty are no change, and a fault stands at the field it was typed in', () => {
    const read = readWhatIf(
      {
        policy: 'compound',
        'learning.rate': '0.92',
        'conditions[1].level': '*',
        'conditions[1].mountingHeightMm': `14'-0"`,
        'conditions[1].liveArea': 'no',
        'routes[2].run': straight.id,
        'routes[2].legsMm': `40'-0"; 20'-0"`,
      },
      demo.project,
    );
    expect(read.faults).toEqual([]);
    expect(read.change).toEqual({
      policy: 'compound',
      learning: { rate: 0.92 },
      conditions: [{ level: null, mountingHeightMm: 4267.2, liveArea: false }],
      routes: [{ run: straight.id, legsMm: [12_192, 6_096] }],
    });
    expect(read.fieldOf('routes[0].legsMm')).toBe('routes[2].legsMm');
  });

  test('a row without what names it, and hours of nought, are asked for where they stand', () => {
    const read = readWhatIf(
      { 'conditions[2].congestion': 'tight', 'activities[1].activity': 'joint', 'activities[1].likely': '0' },
      demo.project,
    );
    expect(read.faults).toEqual([
      { field: 'conditions[2].level', said: 'Choose the level, or every level.' },
      { field: 'activities[1].likely', said: 'Give the likely hours, above 0, as 0.6.' },
    ]);
  });

  test('nothing typed changes nothing', () => {
    expect(readWhatIf({ policy: '', 'conditions[0].level': '' }, demo.project)).toMatchObject({
      change: {},
      faults: [],
    });
  });
});
