import { describe, expect, it } from 'vitest';
import { nextTodo, type RunThings, workList } from '../../../src/domain/quality/work-list.ts';
import { feet } from '../../support/job.ts';

/** Two sections of 20 ft on three hangers, a joint at the feed and one between them, one tap-off; invented. */
function things(changes: Partial<RunThings> = {}): RunThings {
  return {
    supports: [{ state: 'set' }, { state: 'set' }, { state: 'set' }],
    pieces: [
      { state: 'planned', from: feet(0), to: feet(20) },
      { state: 'planned', from: feet(20), to: feet(40) },
    ],
    joints: [
      { state: 'open', at: feet(0) },
      { state: 'open', at: feet(20) },
    ],
    taps: [{ state: 'planned', at: feet(30) }],
    openEnds: ['far'],
    slot: 'open',
    test: 'due',
    ...changes,
  };
}

const hung = (...states: readonly ('hung' | 'planned' | 'quarantined')[]) =>
  states.map((state, index) => ({ state, from: feet(20 * index), to: feet(20 * index + 20) }));

describe('what is left to do on a run', () => {
  it('goes from hangers over pieces, joints, ends and slot to tap-offs and the test', () => {
    const list = workList(things({ supports: [{ state: 'planned' }] }));
    expect(list.map(({ doing }) => doing)).toEqual([
      'set-hanger',
      'hang-piece',
      'hang-piece',
      'make-joint',
      'make-joint',
      'close-end',
      'close-slot',
      'set-tap',
      'test-insulation',
    ]);
    expect(nextTodo(list)).toEqual({ doing: 'set-hanger', index: 0, ready: true });
  });

  it('a joint waits for both of its pieces, that of the feed only for the first', () => {
    const list = workList(things({ pieces: hung('hung', 'planned') }));
    expect(list.filter(({ doing }) => doing === 'make-joint')).toEqual([
      { doing: 'make-joint', index: 0, ready: true },
      { doing: 'make-joint', index: 1, ready: false },
    ]);
  });

  it('a piece in quarantine is nobody’s next step, and holds up its joints, its tap-offs and the test', () => {
    const list = workList(
      things({
        pieces: hung('hung', 'quarantined'),
        openEnds: [],
        slot: 'closed',
        joints: [{ state: 'open', at: feet(20) }],
      }),
    );
    expect(list.filter(({ ready }) => ready)).toEqual([]);
    expect(nextTodo(list)).toBeNull();
  });

  it('a closed joint waits for the person who accepts it, a set tap-off for the one who checks it', () => {
    const list = workList(
      things({
        pieces: hung('hung', 'hung'),
        joints: [{ state: 'closed', at: feet(20) }],
        taps: [{ state: 'set', at: feet(30) }],
      }),
    );
    expect(list.map(({ doing }) => doing)).toContain('accept-joint');
    expect(list.map(({ doing }) => doing)).toContain('check-tap');
  });

  it('the test is last: it waits until nothing else is left, and nothing is left once it passed', () => {
    const built = things({
      pieces: hung('hung', 'hung'),
      joints: [{ state: 'accepted', at: feet(20) }],
      taps: [{ state: 'checked', at: feet(30) }],
      openEnds: [],
      slot: 'closed',
    });
    expect(workList(built)).toEqual([{ doing: 'test-insulation', ready: true }]);
    expect(workList({ ...built, test: 'passed' })).toEqual([]);
    expect(workList({ ...built, slot: 'open' }).at(-1)).toEqual({ doing: 'test-insulation', ready: false });
  });
});
