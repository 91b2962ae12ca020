import { describe, expect, test } from 'vitest';
import { RUN_STATUSES, type RunCounts, runStatus } from '../../../src/domain/quality/run-status.ts';
import { clock } from './cast.ts';

const PLANNED: RunCounts = {
  pieces: { planned: 4 },
  joints: { open: 4 },
  supports: { planned: 8 },
  ends: { open: 1, closed: 0 },
  slot: 'open',
  test: null,
  lastWork: null,
};
const BUILT: RunCounts = {
  pieces: { accepted: 4 },
  joints: { accepted: 4 },
  supports: { set: 3, accepted: 5 },
  ends: { open: 0, closed: 1 },
  slot: 'closed',
  test: null,
  lastWork: clock('13:00'),
};

const open = (counts: RunCounts) => runStatus(counts).open.map(({ code, count, of }) => `${code} ${count} of ${of}`);

describe('the status of a run', () => {
  test('is planned until something hangs, with everything that is to do', () => {
    expect(runStatus(PLANNED).status).toBe('planned');
    expect(open(PLANNED)).toEqual([
      'pieces-not-hung 4 of 4',
      'supports-not-set 8 of 8',
      'joints-not-accepted 4 of 4',
      'ends-open 1 of 1',
      'slot-open 1 of 1',
    ]);
  });

  test('material on the floor does not make it an installation, one hanger does', () => {
    expect(runStatus({ ...PLANNED, pieces: { 'on-site': 4 } }).status).toBe('planned');
    expect(runStatus({ ...PLANNED, supports: { planned: 7, set: 1 } }).status).toBe('in-installation');
  });

  test('is mechanically complete when every joint is accepted, every hanger in, every end and the slot closed', () => {
    expect(runStatus(BUILT)).toEqual({
      status: 'mechanically-complete',
      open: [{ code: 'test-missing', count: 1, of: 1, detail: null }],
    });
  });

  test.each([
    ['a joint only closed', { joints: { accepted: 3, closed: 1 } }, ['joints-not-accepted 1 of 4']],
    ['a joint reopened', { joints: { accepted: 3, reopened: 1 } }, ['joints-reopened 1 of 4']],
    ['a piece on the floor', { pieces: { accepted: 3, 'on-site': 1 } }, ['pieces-not-hung 1 of 4']],
    ['a piece in quarantine', { pieces: { accepted: 3, quarantined: 1 } }, ['pieces-quarantined 1 of 4']],
    ['a hanger missing', { supports: { accepted: 7, planned: 1 } }, ['supports-not-set 1 of 8']],
    ['an open end', { ends: { open: 1, closed: 0 } }, ['ends-open 1 of 1']],
    ['an open slot', { slot: 'open' }, ['slot-open 1 of 1']],
  ] as const)('%s keeps it in installation, and says so', (_what, change, expected) => {
    const counts: RunCounts = { ...BUILT, test: { verdict: 'pass', at: clock('14:00') }, ...change };
    expect(runStatus(counts).status).toBe('in-installation');
    expect(open(counts)).toEqual(expected);
  });

  test('is tested with a passing test after the last work, and nothing open', () => {
    expect(runStatus({ ...BUILT, test: { verdict: 'pass', at: clock('14:00') } })).toEqual({
      status: 'tested',
      open: [],
    });
  });

  test.each(['fail', 'incomplete', 'information-only'] as const)(
    'a newest test that is %s leaves it untested',
    (verdict) => {
      expect(runStatus({ ...BUILT, test: { verdict, at: clock('14:00') } })).toMatchObject({
        status: 'mechanically-complete',
        open: [{ code: 'test-not-passed', detail: verdict }],
      });
    },
  );

  test('work after the test makes it stale, and the run untested', () => {
    const counts = { ...BUILT, test: { verdict: 'pass', at: clock('14:00') }, lastWork: clock('15:40') } as const;
    expect(runStatus(counts)).toMatchObject({
      status: 'mechanically-complete',
      open: [{ code: 'test-stale', detail: clock('15:40') }],
    });
  });

  test('a run that no layout fills has nothing to be complete of', () => {
    expect(runStatus({ ...BUILT, pieces: {}, joints: {}, supports: {}, ends: { open: 0, closed: 0 } })).toMatchObject({
      open: [{ code: 'layout-missing' }],
    });
    expect(runStatus({ ...PLANNED, pieces: {}, joints: {}, supports: {} }).status).toBe('planned');
  });

  test('no status says that a run is, or may be, energised', () => {
    expect(RUN_STATUSES).toEqual(['planned', 'in-installation', 'mechanically-complete', 'tested']);
  });
});
