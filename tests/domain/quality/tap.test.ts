import { describe, expect, test } from 'vitest';
import { decideTap, type TapSite } from '../../../src/domain/quality/decide-tap.ts';
import { dropSupportLimit } from '../../../src/domain/quality/drop-limit.ts';
import type { SiteRecord, TapBody } from '../../../src/domain/quality/record.ts';
import { tapCard } from '../../../src/domain/quality/tap-card.ts';
import { FOOT, fromMm } from '../../../src/domain/units/length.ts';
import { asked, clock, IBE, kept, LUND, OKAFOR, RULES } from './cast.ts';

type SetBody = Extract<TapBody, { readonly kind: 'tap-set' }>;

const SET: SetBody = {
  kind: 'tap-set',
  isolation: { runIsolated: true, absenceOfVoltageProved: true, provedBy: 'K. Lund', provedAt: clock('07:30') },
  device: { off: true, locked: true },
  steps: ['head into the slot', 'box seated flush', 'secured'],
  phasesFound: 'L2',
  note: null,
};
const set = (more: Partial<SetBody> = {}) => asked('tap', clock('08:00'), { ...SET, ...more });
const supported = (distance = 5 * FOOT) =>
  asked('tap', clock('09:00'), { kind: 'drop-supported', distance, note: null } as const);
const checked = () => asked('tap', clock('10:00'), { kind: 'tap-checked', note: null } as const);

const site = (records: readonly SiteRecord[], more: Partial<TapSite> = {}): TapSite => ({
  phasesPlanned: 'L2',
  drop: 6 * FOOT,
  state: 'planned',
  piece: { mark: 'L2-R03-A-P04', state: 'hung', quarantineReason: null },
  card: tapCard(records),
  rules: RULES,
  now: clock('18:00'),
  version: 1,
  ...more,
});

describe('setting a tap-off', () => {
  test('on an isolated, proved run with its device off and locked, on the phase of the plan', () => {
    expect(decideTap(site([]), set(), IBE)).toMatchObject({ ok: true, state: { state: 'set' } });
  });

  test('is refused on a run that is not isolated and proved', () => {
    const isolation = { ...SET.isolation, runIsolated: false, absenceOfVoltageProved: false };
    expect(decideTap(site([]), set({ isolation }), IBE)).toMatchObject({
      refusal: { code: 'tap.not-isolated', args: { missing: ['run isolated', 'absence of voltage proved'] } },
    });
  });

  test('is refused when the proof came after the work', () => {
    const isolation = { ...SET.isolation, provedAt: clock('08:30') };
    expect(decideTap(site([]), set({ isolation }), IBE)).toMatchObject({ refusal: { code: 'tap.proved-after' } });
  });

  test('is refused with a device that is on, or off and not locked', () => {
    expect(decideTap(site([]), set({ device: { off: false, locked: false } }), IBE)).toMatchObject({
      refusal: { code: 'tap.device-not-locked', args: { missing: ['off', 'locked'] } },
    });
    expect(decideTap(site([]), set({ device: { off: true, locked: false } }), IBE)).toMatchObject({
      refusal: { args: { missing: ['locked'] } },
    });
  });

  test('is refused on another phase than the plan, with both', () => {
    expect(decideTap(site([]), set({ phasesFound: 'L1' }), IBE)).toMatchObject({
      refusal: { code: 'tap.phases-differ', args: { planned: 'L2', found: 'L1' } },
    });
  });

  test("is refused without the steps of the tap-off's own sheet", () => {
    expect(decideTap(site([]), set({ steps: [] }), IBE)).toMatchObject({ refusal: { code: 'tap.no-steps' } });
  });

  test('is refused on a section that is not hung, or quarantined', () => {
    expect(
      decideTap(site([], { piece: { mark: 'P04', state: 'on-site', quarantineReason: null } }), set(), IBE),
    ).toMatchObject({ refusal: { code: 'tap.piece-not-hung' } });
    expect(
      decideTap(site([], { piece: { mark: 'P04', state: 'quarantined', quarantineReason: 'wet' } }), set(), IBE),
    ).toMatchObject({ refusal: { code: 'piece.quarantined', args: { reason: 'wet' } } });
  });

  test('is refused twice, and on a tap-off that was removed', () => {
    expect(decideTap(site([kept(set(), IBE)]), set(), LUND)).toMatchObject({
      refusal: { code: 'tap.already-set', args: { by: 'R. Ibe' } },
    });
    expect(decideTap(site([], { state: 'removed' }), set(), IBE)).toMatchObject({ refusal: { code: 'tap.removed' } });
  });
});

describe('the drop of a tap-off', () => {
  test('trap 1: NEC 368.56(B) prints 1.8 m (6 ft), and the project unit says which is meant', () => {
    expect(dropSupportLimit('NEC', 'ft-in')?.limit).toBe(6 * FOOT);
    expect(dropSupportLimit('NEC', 'metric')?.limit).toBe(fromMm(1800));
    expect(dropSupportLimit('IEC', 'metric')).toBeNull();
  });

  test('supported at the limit passes, a sixteenth of an inch further does not', () => {
    expect(decideTap(site([]), supported(6 * FOOT), IBE)).toMatchObject({ ok: true });
    expect(decideTap(site([]), supported(6 * FOOT + 127), IBE)).toMatchObject({
      refusal: { code: 'tap.drop-too-far', args: { limit: 6 * FOOT, source: 'NEC 368.56(B)' } },
    });
  });

  test('where the code basis prints no limit, the distance is kept and not judged', () => {
    const rules = { ...RULES, codeBasis: 'IEC' } as const;
    expect(decideTap(site([], { rules }), supported(20 * FOOT), IBE)).toMatchObject({
      ok: true,
      remarks: [{ code: 'drop.limit-not-judged' }],
    });
  });

  test('a tap-off without a drop has none to support', () => {
    expect(decideTap(site([], { drop: null }), supported(), IBE)).toMatchObject({ refusal: { code: 'tap.no-drop' } });
  });
});

describe('checking a tap-off', () => {
  const ready = [kept(set(), IBE), kept(supported(), IBE)];

  test('is done by another person, once its drop is supported', () => {
    expect(decideTap(site(ready), checked(), OKAFOR)).toMatchObject({ ok: true, state: { state: 'checked' } });
    expect(decideTap(site(ready), checked(), IBE)).toMatchObject({
      refusal: { code: 'tap.own-work', args: { name: 'R. Ibe' } },
    });
    expect(decideTap(site([kept(set(), IBE)]), checked(), OKAFOR)).toMatchObject({
      refusal: { code: 'tap.drop-unsupported', args: { limit: 6 * FOOT } },
    });
  });

  test('needs no support where there is no drop', () => {
    expect(decideTap(site([kept(set(), IBE)], { drop: null }), checked(), OKAFOR)).toMatchObject({ ok: true });
  });

  test('does not come before setting, nor twice', () => {
    expect(decideTap(site([]), checked(), OKAFOR)).toMatchObject({ refusal: { code: 'tap.not-set' } });
    expect(decideTap(site([...ready, kept(checked(), OKAFOR)]), checked(), OKAFOR)).toMatchObject({
      refusal: { code: 'tap.already-checked' },
    });
  });

  test('a delivered tap-off is on site, and stays set when its delivery is recorded late', () => {
    const delivered = kept(asked('tap', clock('07:00'), { kind: 'tap-on-site', lot: 'C-9' } as const), LUND);
    expect(tapCard([delivered]).state).toBe('on-site');
    expect(tapCard([kept(set(), IBE), delivered]).state).toBe('set');
  });
});
