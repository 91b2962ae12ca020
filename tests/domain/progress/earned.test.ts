import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CREDIT_UNIT, creditOf, RULES_OF_CREDIT } from '../../../src/domain/progress/credit.ts';
import { type BudgetLine, earned, type StateCount } from '../../../src/domain/progress/earned.ts';
import { stateCounts } from '../../../src/domain/progress/state-counts.ts';
import type { ReportedActivity } from '../../../src/domain/quality/record.ts';
import { FOOT } from '../../../src/domain/units/length.ts';

const TWENTY = 20 * FOOT;
const TEN = 10 * FOOT;

const line = (
  activity: BudgetLine['activity'],
  pieces: number,
  each: number,
  more: Partial<BudgetLine> = {},
): BudgetLine => ({
  activity,
  run: 'all',
  level: 'L1',
  length: null,
  pieces,
  hours: pieces * each,
  ...more,
});
const count = (
  activity: StateCount['activity'],
  state: string,
  number: number,
  length: number | null = null,
): StateCount => ({ run: 'all', activity, length, state, count: number });

/** Scenario T5 of the job map: 48 standard runs, base units, six codes and tests. Quantities and hours are invented there. */
const T5_BUDGET: readonly BudgetLine[] = [
  line('support', 384, 0.5),
  line('section', 144, 1.0, { length: TWENTY }),
  line('section', 48, 0.6, { length: TEN }),
  line('joint', 192, 0.6),
  line('end-feed', 48, 1.5),
  line('termination', 240, 0.4),
  line('tap', 960, 0.4),
  line('drop', 960, 0.35),
  line('test-insulation', 48, 9.6),
];
const T5_COUNTS: readonly StateCount[] = [
  count('support', 'set', 200),
  count('support', 'accepted', 60),
  count('support', 'planned', 124),
  count('section', 'accepted', 80, TWENTY),
  count('section', 'hung', 16, TWENTY),
  count('section', 'planned', 48, TWENTY),
  count('section', 'accepted', 24, TEN),
  count('section', 'hung', 8, TEN),
  count('section', 'on-site', 16, TEN),
  count('joint', 'accepted', 104),
  count('joint', 'seated', 15),
  count('joint', 'closed', 5),
  count('joint', 'open', 68),
  count('end-feed', 'done', 10),
  count('end-feed', 'open', 38),
  count('termination', 'done', 50),
  count('termination', 'open', 190),
  count('tap', 'checked', 120),
  count('tap', 'planned', 840),
  count('drop', 'done', 60),
  count('drop', 'open', 900),
  count('test-insulation', 'open', 48),
];

describe('scenario T5 of the job map', () => {
  const found = earned(T5_BUDGET, T5_COUNTS);

  test('411.7 hours of 1,828.8 are earned: 22.5 %, where 67 % of the length hangs', () => {
    expect(found.total.budgetHours).toBeCloseTo(1828.8, 9);
    expect(found.total.earnedHours).toBeCloseTo(411.7, 1);
    expect(found.total.percent).toBeCloseTo(22.5, 1);
    expect(found.total.unreportedHours).toBe(0);
    expect((96 * 20 + 32 * 10) / (144 * 20 + 48 * 10)).toBeCloseTo(0.67, 2);
  });

  test('by code: hangers 130, sections 106.88, joints 70.8, feeds 35, tap-offs 48, cords 21, tests nought', () => {
    const byCode = new Map(found.byActivity.map(({ key, earnedHours }) => [key, earnedHours]));
    expect(byCode.get('support')).toBeCloseTo(130, 9);
    expect(byCode.get('section')).toBeCloseTo(106.88, 9);
    expect(byCode.get('joint')).toBeCloseTo(70.8, 9);
    expect((byCode.get('end-feed') ?? 0) + (byCode.get('termination') ?? 0)).toBeCloseTo(35, 9);
    expect(byCode.get('tap')).toBeCloseTo(48, 9);
    expect(byCode.get('drop')).toBeCloseTo(21, 9);
    expect(byCode.get('test-insulation')).toBe(0);
  });

  test('mistake 36: of 144 long sections, 80 accepted and 16 hung at 60 % are 62 %, counted and not typed', () => {
    const long = found.lines.find(({ length }) => length === TWENTY);
    expect(long?.credited).toBeCloseTo(89.6, 9);
    expect((100 * (long?.credited ?? 0)) / 144).toBeCloseTo(62, 0);
  });
});

describe('hours earned', () => {
  test('blank is not nought: a line that nobody reported on has no earned hours, and its budget is told apart', () => {
    const found = earned([line('joint', 4, 0.6), line('label', 24, 0.08)], [count('joint', 'accepted', 4)]);
    expect(found.lines[1]).toMatchObject({ credited: null, earnedHours: null });
    expect(found.total.unreportedHours).toBeCloseTo(1.92, 9);
    expect(found.total.percent).toBeCloseTo((100 * 2.4) / 4.32, 9);
    const nought = earned([line('joint', 4, 0.6)], [count('joint', 'open', 4)]);
    expect(nought.lines[0]).toMatchObject({ credited: 0, earnedHours: 0 });
  });

  test('never pass their budget, and a count that differs from the budgeted pieces is told', () => {
    const found = earned([line('joint', 4, 0.6)], [count('joint', 'accepted', 6)]);
    expect(found.total.earnedHours).toBeCloseTo(2.4, 9);
    expect(found.unmatched).toMatchObject([{ activity: 'joint', pieces: 4, counted: 6 }]);
    expect(earned(T5_BUDGET, T5_COUNTS).unmatched).toEqual([]);
  });

  test('a count without lengths is spread over the lengths in proportion to their pieces', () => {
    const drops = [line('drop', 15, 0.3, { length: TEN }), line('drop', 5, 0.5, { length: TWENTY })];
    const found = earned(drops, [count('drop', 'done', 8), count('drop', 'open', 12)]);
    expect(found.lines.map(({ credited }) => credited)).toEqual([6, 2]);
    expect(found.total.earnedHours).toBeCloseTo(6 * 0.3 + 2 * 0.5, 9);
    expect(found.unmatched).toEqual([]);
  });

  test('sum up by run and by level to the job', () => {
    const budget = [
      line('joint', 4, 0.6, { run: 'a', level: 'L1' }),
      line('joint', 4, 0.6, { run: 'b', level: 'L2' }),
      line('extra', 1, 8, { run: null, level: null }),
    ];
    const counts: StateCount[] = [
      { run: 'a', activity: 'joint', length: null, state: 'accepted', count: 4 },
      { run: 'b', activity: 'joint', length: null, state: 'seated', count: 4 },
    ];
    const found = earned(budget, counts);
    expect(found.byRun.map(({ key, percent }) => [key, Math.round(percent ?? -1)])).toEqual([
      ['a', 100],
      ['b', 70],
    ]);
    expect(found.byLevel.map(({ key }) => key)).toEqual(['L1', 'L2']);
    expect(found.total).toMatchObject({ budgetHours: 12.8, unreportedHours: 8 });
  });

  test('no budget has no percentage', () => {
    expect(earned([], []).total.percent).toBeNull();
  });

  test('are never below nought nor above the budget, and a step further never earns less', () => {
    const states = ['planned', 'hung', 'joined', 'accepted'] as const;
    fc.assert(
      fc.property(fc.array(fc.nat(20), { minLength: 4, maxLength: 4 }), fc.nat(2), (numbers, from) => {
        const pieces = numbers.reduce((sum, number) => sum + number, 0);
        const budget = [line('section', pieces, 0.6, { length: TEN })];
        const counted = (list: readonly number[]) =>
          states.map((state, index) => count('section', state, list[index] ?? 0, TEN));
        const before = earned(budget, counted(numbers)).total;
        const moved = numbers.map((number, index) =>
          numbers[from] === 0 ? number : index === from ? number - 1 : index === from + 1 ? number + 1 : number,
        );
        const after = earned(budget, counted(moved)).total;
        expect(before.earnedHours).toBeGreaterThanOrEqual(0);
        expect(before.earnedHours).toBeLessThanOrEqual(before.budgetHours + 1e-9);
        expect(after.earnedHours).toBeGreaterThanOrEqual(before.earnedHours - 1e-9);
      }),
    );
  });
});

describe('rules of credit', () => {
  test('a section: hung 60 %, its joints accepted 100 %; a joint: seated 70 %, accepted 100 %; a tap-off: set 60 %, checked 100 %', () => {
    expect([creditOf('section', 'hung'), creditOf('section', 'joined'), creditOf('section', 'accepted')]).toEqual([
      0.6, 0.6, 1,
    ]);
    expect([creditOf('joint', 'seated'), creditOf('joint', 'closed'), creditOf('joint', 'accepted')]).toEqual([
      0.7, 0.7, 1,
    ]);
    expect([creditOf('tap', 'set'), creditOf('tap', 'checked')]).toEqual([0.6, 1]);
    expect(creditOf('support', 'set')).toBe(1);
  });

  test('what is reopened or quarantined has earned nothing', () => {
    expect(creditOf('joint', 'reopened')).toBe(0);
    expect(creditOf('section', 'quarantined')).toBe(0);
  });

  test('every activity of the labour book has a rule, and a state that it does not know is a fault', () => {
    expect(Object.values(CREDIT_UNIT).every((unit) => unit in RULES_OF_CREDIT)).toBe(true);
    expect(() => creditOf('joint', 'hung')).toThrow('no rule of credit for joint in state hung');
  });
});

describe('the counts of one run', () => {
  const counts = stateCounts({
    run: 'F1-R1-A',
    pieces: [
      { kind: 'stock', length: TWENTY, state: 'hung', count: 2 },
      { kind: 'cut', length: TEN, state: 'planned', count: 1 },
      { kind: 'elbow', length: 2 * FOOT, state: 'on-site', count: 1 },
    ],
    joints: { open: 3, seated: 1 },
    supports: { set: 8 },
    taps: { 'on-site': 20 },
    drops: { supported: 5, of: 20 },
    ends: { open: 1, closed: 0 },
    slot: 'open',
    insulationTest: 'open',
    reported: new Map<ReportedActivity, number | 'all'>([
      ['label', 18],
      ['end-feed', 'all'],
    ]),
    budgetPieces: new Map([
      ['label', 24],
      ['end-feed', 1],
    ]),
  });
  const of = (activity: string) =>
    counts
      .filter((entry) => entry.activity === activity)
      .map(({ state, count: number, length }) => [state, number, length]);

  test('sections stand by length, fittings and all else without', () => {
    expect(of('section')).toEqual([
      ['hung', 2, TWENTY],
      ['planned', 1, TEN],
    ]);
    expect(of('handle-section')).toEqual(of('section'));
    expect(of('elbow')).toEqual([['on-site', 1, null]]);
    expect(of('joint')).toEqual([
      ['open', 3, null],
      ['seated', 1, null],
    ]);
  });

  test('what a record says is done counts, the rest of it is open', () => {
    expect(of('label')).toEqual([
      ['done', 18, null],
      ['open', 6, null],
    ]);
    expect(of('end-feed')).toEqual([['done', 1, null]]);
    expect(of('drop')).toEqual([
      ['done', 5, null],
      ['open', 15, null],
    ]);
    expect(of('slot-closure')).toEqual([['open', 1, null]]);
  });

  test('what nobody reported gives no count', () => {
    expect(of('fire-seal')).toEqual([]);
  });

  test('a delivered tap-off has earned its handling and nothing of its setting', () => {
    const found = earned(
      [line('tap', 20, 0.4, { run: 'F1-R1-A' }), line('handle-tap', 20, 0.05, { run: 'F1-R1-A' })],
      counts,
    );
    expect(found.lines.map(({ earnedHours }) => earnedHours)).toEqual([0, 1]);
  });
});
