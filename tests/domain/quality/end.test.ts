import { describe, expect, test } from 'vitest';
import { decideEnd, type EndBody, type RunSite } from '../../../src/domain/quality/decide-end.ts';
import { openEnds, runCard } from '../../../src/domain/quality/end-card.ts';
import type { SiteRecord } from '../../../src/domain/quality/record.ts';
import { asked, clock, IBE, INSULATION_BODY, kept, LUND, OKAFOR } from './cast.ts';

const site = (records: readonly SiteRecord[], more: Partial<RunSite> = {}): RunSite => ({
  card: runCard(['far'], records),
  endPieces: { far: { mark: 'L2-R03-A-P08', state: 'hung', quarantineReason: null } },
  pieces: new Map([['label', 24]]),
  now: clock('18:00'),
  version: 1,
  ...more,
});
const say = (body: EndBody, at = clock('15:00')) => asked('run', at, body);
const closed = (more: Partial<Extract<EndBody, { kind: 'end-closed' }>> = {}) =>
  say({ kind: 'end-closed', end: 'far', capFitted: true, screwSet: true, ...more });
const labels = (quantity: number | null) => say({ kind: 'activity-done', activity: 'label', quantity, note: null });

describe('the ends of a run', () => {
  test('an end-fed run and a branch have one end to close, a centre-fed run two', () => {
    expect(openEnds({ kind: 'end' })).toEqual(['far']);
    expect(openEnds({ kind: 'tee' })).toEqual(['far']);
    expect(openEnds({ kind: 'centre' })).toEqual(['near', 'far']);
  });

  test('an end is closed with its cap fitted and its screw set', () => {
    expect(decideEnd(site([]), closed(), IBE)).toMatchObject({
      ok: true,
      state: { ends: [{ end: 'far', closed: { by: { name: 'R. Ibe' } } }] },
    });
    expect(decideEnd(site([]), closed({ screwSet: false }), IBE)).toMatchObject({
      refusal: { code: 'end.not-ready', args: { missing: ['screw set'] } },
    });
  });

  test('not twice, not where the run is fed, and not before its piece hangs', () => {
    expect(decideEnd(site([kept(closed(), IBE)]), closed(), LUND)).toMatchObject({
      refusal: { code: 'end.already-closed', args: { by: 'R. Ibe' } },
    });
    expect(decideEnd(site([]), closed({ end: 'near' }), IBE)).toMatchObject({
      refusal: { code: 'end.not-open', args: { ends: ['far'] } },
    });
    const loose = { far: { mark: 'L2-R03-A-P08', state: 'on-site', quarantineReason: null } } as const;
    expect(decideEnd(site([], { endPieces: loose }), closed(), IBE)).toMatchObject({
      refusal: { code: 'end.piece-not-hung' },
    });
  });

  test('a closed end that is opened is open until it is closed again', () => {
    const opened = say({ kind: 'end-opened', end: 'far', reason: 'to add a section' }, clock('16:00'));
    expect(decideEnd(site([]), opened, LUND)).toMatchObject({ refusal: { code: 'end.not-closed' } });
    expect(decideEnd(site([kept(closed(), IBE)]), opened, LUND)).toMatchObject({
      ok: true,
      state: { ends: [{ closed: null }] },
    });
    const again = kept({ ...closed(), at: clock('17:00') }, IBE);
    expect(runCard(['far'], [kept(closed(), IBE), kept(opened, LUND), again]).ends[0]?.closed?.at).toBe(clock('17:00'));
  });

  test('a closing that a telephone hands in late does not hide the opening that came after it', () => {
    const opened = kept(say({ kind: 'end-opened', end: 'far', reason: 'to add a section' }, clock('16:00')), LUND);
    const late = kept(closed(), IBE, clock('17:30'));
    expect(runCard(['far'], [opened, late]).ends[0]?.closed).toBeNull();
  });

  test('the slot likewise', () => {
    const shut = say({ kind: 'slot-closed', note: null });
    const opened = say({ kind: 'slot-opened', reason: 'tap-off moved' });
    expect(decideEnd(site([]), shut, IBE)).toMatchObject({ ok: true, state: { slot: { by: { name: 'R. Ibe' } } } });
    expect(decideEnd(site([kept(shut, IBE)]), shut, IBE)).toMatchObject({ refusal: { code: 'slot.already-closed' } });
    expect(decideEnd(site([]), opened, IBE)).toMatchObject({ refusal: { code: 'slot.not-closed' } });
    expect(decideEnd(site([kept(shut, IBE)]), opened, IBE)).toMatchObject({ ok: true, state: { slot: null } });
  });
});

describe('mistake 39: deleting a failed test', () => {
  const tested = (outcome: 'pass' | 'fail') => ({
    ...kept(asked('run', clock('14:00'), INSULATION_BODY), OKAFOR),
    outcome,
  });
  const withdrawal = (id: string) =>
    asked('run', clock('15:00'), { kind: 'record-withdrawn' } as const, { supersedes: { id, cause: 'wrong run' } });

  test('is refused with its verdict; a passing one recorded on the wrong run may be withdrawn', () => {
    const [failed, passed] = [tested('fail'), tested('pass')];
    expect(decideEnd(site([failed]), withdrawal(failed.id), OKAFOR)).toMatchObject({
      refusal: { code: 'record.failed-test-withdrawn', args: { verdict: 'fail' } },
    });
    expect(decideEnd(site([passed]), withdrawal(passed.id), OKAFOR)).toMatchObject({ ok: true });
  });

  test('a withdrawal that names no record is refused', () => {
    expect(
      decideEnd(site([]), asked('run', clock('15:00'), { kind: 'record-withdrawn' } as const), OKAFOR),
    ).toMatchObject({ refusal: { code: 'record.withdrawal-names-none' } });
  });
});

describe('work that only a record can say is done', () => {
  test('adds up, and an activity that nobody reported is absent', () => {
    const card = runCard(['far'], [kept(labels(10), IBE), kept(labels(8), IBE)]);
    expect(card.reported.get('label')).toBe(18);
    expect(card.reported.has('fire-seal')).toBe(false);
    expect(runCard(['far'], [kept(labels(null), IBE)]).reported.get('label')).toBe('all');
  });

  test('more than the run has is refused with the count', () => {
    expect(decideEnd(site([kept(labels(20), IBE)]), labels(5), IBE)).toMatchObject({
      refusal: { code: 'activity.over-counted', args: { total: 24, done: 20, asked: 5 } },
    });
    expect(decideEnd(site([kept(labels(20), IBE)]), labels(4), IBE)).toMatchObject({ ok: true });
    expect(decideEnd(site([kept(labels(null), IBE)]), labels(1), IBE)).toMatchObject({
      refusal: { args: { done: 24 } },
    });
  });

  test('a run’s records may reach the book in any order of the day', () => {
    expect(decideEnd(site([kept(labels(2), IBE)]), { ...labels(2), at: clock('07:00') }, IBE)).toMatchObject({
      ok: true,
    });
  });
});
