import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  boundariesOf,
  connectionsOf,
  isStale,
  lastWorkInBoundary,
  staleBecause,
  type Work,
} from '../../../src/domain/quality/stale.ts';
import { clock } from './cast.ts';

const RUNS = ['L1-R06-A', 'L1-R06-B', 'L1-R06-A-T1', 'L1-R06-A-T2'];
const TEES = connectionsOf([
  { id: 'L1-R06-A', feed: { kind: 'end', fromRun: null } },
  { id: 'L1-R06-B', feed: { kind: 'end', fromRun: null } },
  { id: 'L1-R06-A-T1', feed: { kind: 'tee', fromRun: 'L1-R06-A' } },
  { id: 'L1-R06-A-T2', feed: { kind: 'tee', fromRun: 'L1-R06-A-T1' } },
]);
const BOUNDARIES = boundariesOf(RUNS, TEES);

const work = (run: string, kind: Work['kind'], time: string): Work => ({
  run,
  kind,
  at: clock(time),
  mark: `${run}-J03`,
});

describe('the electrical boundary of a run', () => {
  test('reaches over tees of tees, and not to the other side', () => {
    expect(BOUNDARIES.get('L1-R06-A')).toEqual(['L1-R06-A', 'L1-R06-A-T1', 'L1-R06-A-T2']);
    expect(BOUNDARIES.get('L1-R06-A-T2')).toEqual(BOUNDARIES.get('L1-R06-A'));
    expect(BOUNDARIES.get('L1-R06-B')).toEqual(['L1-R06-B']);
  });

  test('a connection to a run that is not there connects nothing', () => {
    expect(boundariesOf(['a'], [['a', 'gone']]).get('a')).toEqual(['a']);
  });

  test('agrees with a reachability matrix (Warshall) on random graphs', () => {
    const edge = fc.tuple(fc.nat(11), fc.nat(11));
    fc.assert(
      fc.property(fc.array(edge, { maxLength: 16 }), (edges) => {
        const names = Array.from({ length: 12 }, (_, index) => `r${index}`);
        const reach = names.map((_, row) =>
          names.map(
            (__, column) =>
              row === column || edges.some(([a, b]) => (a === row && b === column) || (b === row && a === column)),
          ),
        );
        for (const k of names.keys())
          for (const i of names.keys())
            for (const j of names.keys()) if (reach[i]?.[k] && reach[k]?.[j]) (reach[i] ?? [])[j] = true;
        const found = boundariesOf(
          names,
          edges.map(([a, b]) => [`r${a}`, `r${b}`]),
        );
        expect(names.map((name) => found.get(name))).toEqual(
          reach.map((row) => names.filter((_, column) => row[column])),
        );
      }),
    );
  });
});

describe('a stale test', () => {
  const tested = { run: 'L1-R06-A', at: clock('14:00') };

  test('scenario T8: a joint opened 15:10 and closed 15:40 voids the test of 14:00', () => {
    const found = staleBecause(
      tested,
      [
        work('L1-R06-A', 'joint-step', '15:40'),
        work('L1-R06-A', 'joint-reopened', '15:10'),
        work('L1-R06-A', 'joint-step', '11:00'),
      ],
      BOUNDARIES,
    );
    expect(found.map(({ kind, at }) => [kind, at])).toEqual([
      ['joint-reopened', clock('15:10')],
      ['joint-step', clock('15:40')],
    ]);
  });

  test('so does work on a branch, and none on the other side', () => {
    expect(staleBecause(tested, [work('L1-R06-A-T2', 'tap-set', '14:30')], BOUNDARIES)).toHaveLength(1);
    expect(staleBecause(tested, [work('L1-R06-B', 'tap-set', '14:30')], BOUNDARIES)).toEqual([]);
  });

  test('work before the test does not, also when it reaches the record later', () => {
    expect(staleBecause(tested, [work('L1-R06-A', 'joint-step', '13:59')], BOUNDARIES)).toEqual([]);
  });

  test('work at the very minute of the test does: nothing says which came first', () => {
    expect(staleBecause(tested, [work('L1-R06-A', 'piece-hung', '14:00')], BOUNDARIES)).toHaveLength(1);
  });

  test.each(['joint-accepted', 'support-set', 'tap-checked', 'drop-supported', 'activity-done'] as const)(
    '%s touches nothing that was measured',
    (kind) => {
      expect(staleBecause(tested, [work('L1-R06-A', kind, '15:00')], BOUNDARIES)).toEqual([]);
    },
  );

  test('from the last work of each run alone, a page finds the same', () => {
    const last = lastWorkInBoundary(
      new Map([
        ['L1-R06-A', clock('11:00')],
        ['L1-R06-A-T2', clock('15:40')],
      ]),
      BOUNDARIES,
    );
    expect(last.get('L1-R06-A')).toBe(clock('15:40'));
    expect(last.get('L1-R06-B')).toBeNull();
    expect(isStale(clock('14:00'), last.get('L1-R06-A') ?? null)).toBe(true);
    expect(isStale(clock('15:41'), last.get('L1-R06-A') ?? null)).toBe(false);
    expect(isStale(clock('14:00'), null)).toBe(false);
  });
});
