import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RunEvidence } from '../../../src/domain/closeout/evidence.ts';
import { openItems } from '../../../src/domain/closeout/open-items.ts';
import { ROWS, readiness } from '../../../src/domain/closeout/readiness.ts';
import { gapWords, ROW_WORDS } from '../../../src/domain/closeout/words.ts';
import { JOINT_STATES, PIECE_STATES, SUPPORT_STATES, TAP_STATES } from '../../../src/domain/quality/states.ts';

/** A run with nothing left to do: two pieces, two joints, three hangers, two tap-offs, one with a drop. */
function doneRun(changes: Partial<RunEvidence> = {}): RunEvidence {
  const run = changes.run ?? 'F1-R01-A';
  const thing = <State extends string>(mark: string, state: State) => ({
    id: `${run}/${mark}`,
    mark: `${run}-${mark}`,
    state,
  });
  return {
    run,
    runId: `id of ${run}`,
    revision: 1,
    changed: false,
    pieces: [thing('P01', 'accepted'), thing('P02', 'accepted')],
    joints: [thing('J01', 'accepted'), thing('J02', 'accepted')],
    supports: [thing('H01', 'set'), thing('H02', 'accepted'), thing('H03', 'set')],
    taps: [
      { ...thing('T1', 'checked'), dropSupported: true },
      { ...thing('T2', 'in-service'), dropSupported: null },
    ],
    ends: [{ end: 'far', closed: true }],
    slotClosed: true,
    fireSeals: { needed: 1, reported: 1 },
    insulation: { kind: 'passing' },
    instruments: [{ id: 'IR-02', calibrationDue: '2026-11-30', testId: 'test-1' }],
    ...changes,
  };
}

const rowOf = (runs: readonly RunEvidence[], row: (typeof ROWS)[number]) => {
  const found = readiness(runs, []).rows.find((one) => one.row === row);
  return [found?.present, found?.required, found?.percent];
};

describe('readiness of a closeout', () => {
  it('is whole for a run with nothing left to do', () => {
    const { percent, present, required, gaps } = readiness([doneRun()], [{ type: 'demo-250A-3PN', sheetNamed: true }]);
    // 1 release, 2 pieces, 2 joints, 3 hangers, 1 end, 1 slot, 1 seal, 2 tap-offs, 1 drop, 1 test, 1 instrument, 1 sheet
    expect([present, required, percent, gaps]).toEqual([17, 17, 100, []]);
  });

  it('names the joint that is not accepted, and stands at three of four', () => {
    const joints = ['accepted', 'accepted', 'closed', 'accepted'].map((state, i) => ({
      id: `j${i}`,
      mark: `F1-R01-A-J0${i + 1}`,
      state: state as 'accepted',
    }));
    const { gaps } = readiness([doneRun({ joints })], []);
    expect(rowOf([doneRun({ joints })], 'joints')).toEqual([3, 4, 75]);
    expect(gaps).toEqual([
      {
        row: 'joints',
        run: 'F1-R01-A',
        runId: 'id of F1-R01-A',
        subject: 'joint',
        id: 'j2',
        mark: 'F1-R01-A-J03',
        reason: 'not-accepted',
        count: 1,
      },
    ]);
  });

  it('never says 100 % while one thing of hundreds is missing', () => {
    const runs = Array.from({ length: 300 }, (_, i) => doneRun({ run: `R${i}`, slotClosed: i !== 7 }));
    expect(rowOf(runs, 'slot')).toEqual([299, 300, 99]);
  });

  it('asks nothing of a job without runs, which is no 100 %', () => {
    expect(readiness([], [])).toMatchObject({ required: 0, present: 0, percent: null });
    expect(readiness([], []).rows.every((row) => row.percent === null)).toBe(true);
  });

  it('asks for all of a run that was never released, and says so first', () => {
    const planned = doneRun({
      revision: 0,
      pieces: [{ id: 'r', mark: 'F1-R01-A-P01', state: 'planned' }],
      joints: [{ id: 'r', mark: 'F1-R01-A-J01', state: 'open' }],
      insulation: { kind: 'missing' },
    });
    expect(readiness([planned], []).gaps.map((gap) => gap.reason)).toEqual([
      'not-released',
      'not-hung',
      'not-accepted',
      'test-missing',
    ]);
  });

  it('counts a hanger that is set, and a piece only when the joints at its ends are accepted', () => {
    const piece = (state: 'joined' | 'hung') => doneRun({ pieces: [{ id: 'p', mark: 'F1-R01-A-P01', state }] });
    expect(rowOf([piece('joined')], 'pieces')).toEqual([0, 1, 0]);
    expect(readiness([piece('hung')], []).gaps[0]?.reason).toBe('joints-open');
    expect(rowOf([doneRun({ supports: [{ id: 'h', mark: 'H', state: 'planned' }] })], 'supports')).toEqual([0, 1, 0]);
  });

  it('asks nothing of a tap-off that was taken away, and a drop only where there is one', () => {
    const taps = [{ id: 't', mark: 'T1', state: 'removed' as const, dropSupported: false }];
    expect(rowOf([doneRun({ taps })], 'taps')).toEqual([0, 0, null]);
    expect(rowOf([doneRun({ taps })], 'drops')).toEqual([0, 0, null]);
  });

  it('tells a missing test from a failed, an incomplete and a stale one, and none of them counts', () => {
    const reasons = (['missing', 'failed', 'incomplete', 'information-only', 'stale'] as const).map(
      (kind) => readiness([doneRun({ insulation: { kind } })], []).gaps[0]?.reason,
    );
    expect(reasons).toEqual(['test-missing', 'test-failed', 'test-incomplete', 'test-information-only', 'test-stale']);
  });

  it('asks the calibration date of every instrument, and the sheet of every type', () => {
    const instruments = [{ id: 'IR-09', calibrationDue: null, testId: 'test-9' }];
    const { gaps } = readiness([doneRun({ instruments })], [{ type: 'demo-400A', sheetNamed: false }]);
    expect(gaps.map(({ row, mark, reason }) => [row, mark, reason])).toEqual([
      ['instruments', 'IR-09', 'calibration-unknown'],
      ['sheets', 'demo-400A', 'sheet-not-named'],
    ]);
  });

  it('counts fire seals that are reported in numbers, and no more of them than there are crossings', () => {
    expect(rowOf([doneRun({ fireSeals: { needed: 3, reported: 1 } })], 'fire-seals')).toEqual([1, 3, 33]);
    expect(rowOf([doneRun({ fireSeals: { needed: 1, reported: 5 } })], 'fire-seals')).toEqual([1, 1, 100]);
  });

  it('adds up for any states: what is present and what is missing come to what is asked', () => {
    const things = <State extends string>(states: readonly State[]) =>
      fc.array(
        fc.constantFrom(...states).map((state) => ({ id: 'x', mark: 'X', state })),
        { maxLength: 6 },
      );
    const run = fc.record({
      pieces: things(PIECE_STATES),
      joints: things(JOINT_STATES),
      supports: things(SUPPORT_STATES),
      taps: fc.array(
        fc.record({
          id: fc.constant('t'),
          mark: fc.constant('T'),
          state: fc.constantFrom(...TAP_STATES),
          dropSupported: fc.constantFrom(true, false, null),
        }),
        { maxLength: 6 },
      ),
      slotClosed: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(run, { maxLength: 5 }), (changes) => {
        const runs = changes.map((change) => doneRun(change));
        const { rows, gaps, required, present } = readiness(runs, []);
        expect(required - present).toBe(gaps.reduce((sum, gap) => sum + gap.count, 0));
        // Counted once more, by the words of the rows and not by the code's own lists.
        const accepted = runs.flatMap((one) => one.joints).filter((joint) => joint.state === 'accepted').length;
        const checked = runs
          .flatMap((one) => one.taps)
          .filter((tap) => tap.state === 'checked' || tap.state === 'in-service').length;
        expect(rows.find((row) => row.row === 'joints')?.present).toBe(accepted);
        expect(rows.find((row) => row.row === 'taps')?.present).toBe(checked);
      }),
    );
  });
});

describe('open items', () => {
  it('put the gaps of a run and a reason on one line, with every mark', () => {
    const joints = ['J01', 'J02', 'J03'].map((mark) => ({
      id: mark,
      mark: `F1-R01-A-${mark}`,
      state: mark === 'J02' ? ('accepted' as const) : ('open' as const),
    }));
    const { gaps } = readiness([doneRun({ joints }), doneRun({ run: 'F1-R02-A', slotClosed: false })], []);
    expect(openItems(gaps)).toEqual([
      { run: 'F1-R01-A', row: 'joints', reason: 'not-accepted', marks: ['J01', 'J03'], count: 2 },
      { run: 'F1-R02-A', row: 'slot', reason: 'slot-open', marks: ['F1-R02-A'], count: 1 },
    ]);
  });

  it('have words for every row and every reason', () => {
    const { gaps } = readiness(
      [doneRun({ revision: 0, slotClosed: false, ends: [{ end: 'near', closed: false }] })],
      [],
    );
    expect(ROWS.map((row) => ROW_WORDS[row].title)).not.toContain('');
    expect(gaps.map((gap) => gapWords(gap.reason))).toEqual([
      'not released to the floor',
      'not closed',
      'unused slots not recorded as closed',
    ]);
  });
});
