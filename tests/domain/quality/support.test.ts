import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Actor, SiteRecord } from '../../../src/domain/quality/record.ts';
import { decideSupport, supportCard } from '../../../src/domain/quality/support-card.ts';
import type { SupportSurroundings } from '../../../src/domain/quality/support-surroundings.ts';
import { judgeSupportPlace, supportWindows } from '../../../src/domain/quality/support-window.ts';
import { FOOT, INCH } from '../../../src/domain/units/length.ts';
import { asked, clock, IBE, kept, OKAFOR, RULES } from './cast.ts';

const ft = (feet: number) => Math.round(feet * FOOT);

/** The standard run of scenario T1: 70 ft of 20/20/20/10, spacing 10 ft, hanger at least 1 ft from a joint. */
const RUN: SupportSurroundings = {
  runLength: ft(70),
  planned: ft(19),
  others: [ft(1), ft(10), ft(28), ft(37), ft(46), ft(55), ft(65), ft(69)],
  joints: [ft(0), ft(20), ft(40), ft(60)],
  fittings: [],
  crossings: [],
  noSupport: [],
  structure: { kind: 'continuous' },
  limits: { maxSpacing: ft(10), maxEndOverhang: ft(2), jointClear: ft(1), fittingWithin: null, crossingClear: null },
};

describe('where a hanger really stands', () => {
  test('mistake 6: 4 in from a joint where the tool needs 12: legal at 19.0 ft and below, and nothing above is in reach', () => {
    const place = judgeSupportPlace(ft(20) + 4 * INCH, RUN);
    expect(place.broken).toEqual([
      { rule: 'gap-before', from: ft(10), distance: ft(10) + 4 * INCH, limit: ft(10), reason: null },
      { rule: 'joint', from: ft(20), distance: 4 * INCH, limit: FOOT, reason: null },
    ]);
    expect(place.below).toBe(ft(19));
    expect(place.above).toBeNull();
  });

  test('mistake 6 with neighbours in reach on both sides: legal at 19.0 ft and below or 21.0 ft and above', () => {
    const near = { ...RUN, others: [ft(1), ft(12), ft(28), ft(37)] };
    expect(judgeSupportPlace(ft(20) + 4 * INCH, near)).toMatchObject({ below: ft(19), above: ft(21) });
  });

  test('a distance equal to a limit passes', () => {
    expect(judgeSupportPlace(ft(19), RUN).broken).toEqual([]);
    expect(judgeSupportPlace(ft(19) + 1, RUN).broken).toMatchObject([{ rule: 'joint', distance: FOOT - 1 }]);
  });

  test('a gap to the next hanger is measured as the others really stand', () => {
    const moved = { ...RUN, others: [ft(1), ft(10), ft(29.5), ft(37)] };
    expect(judgeSupportPlace(ft(19), moved).broken).toEqual([
      { rule: 'gap-after', from: ft(29.5), distance: ft(10.5), limit: ft(10), reason: null },
    ]);
    expect(judgeSupportPlace(ft(19), moved).above).toBeNull();
  });

  test('the first and the last hanger answer for the overhang', () => {
    const first = { ...RUN, planned: ft(1), others: RUN.others.slice(1) };
    expect(judgeSupportPlace(ft(2.5), first).broken).toEqual([
      { rule: 'overhang-start', from: 0, distance: ft(2.5), limit: ft(2), reason: null },
    ]);
    const last = { ...RUN, planned: ft(69), others: RUN.others.slice(0, -1) };
    expect(judgeSupportPlace(ft(67), last).broken).toMatchObject([{ rule: 'overhang-end', distance: ft(3) }]);
  });

  test('a hanger that alone holds the arm of a fitting may not leave it', () => {
    const elbow = {
      ...RUN,
      planned: ft(19),
      others: [ft(1), ft(10), ft(26), ft(36)],
      joints: [],
      fittings: [{ from: ft(20), to: ft(22), reason: null }],
      limits: { ...RUN.limits, fittingWithin: ft(2) },
    };
    expect(judgeSupportPlace(ft(17), elbow).broken).toEqual([
      { rule: 'fitting', from: ft(20), distance: ft(3), limit: ft(2), reason: null },
    ]);
    expect(judgeSupportPlace(ft(18), elbow).broken).toEqual([]);
    const helped = { ...elbow, others: [...elbow.others, ft(18.5)] };
    expect(judgeSupportPlace(ft(17), { ...helped, planned: ft(19) }).broken.map(({ rule }) => rule)).not.toContain(
      'fitting',
    );
  });

  test('a hanger measured past its neighbour is another hanger, or a slip of the tape', () => {
    expect(judgeSupportPlace(ft(28.5), { ...RUN, joints: [] }).broken).toMatchObject([
      { rule: 'gap-before' },
      { rule: 'past-neighbour', from: ft(28), distance: ft(0.5) },
    ]);
  });

  test('blocked zones and walls bar with their reason', () => {
    const barred = {
      ...RUN,
      others: [ft(1), ft(10), ft(20)],
      noSupport: [{ from: ft(15), to: ft(18), reason: 'duct' }],
      crossings: [{ from: ft(12), to: ft(13), reason: 'fire-wall' }],
      limits: { ...RUN.limits, crossingClear: ft(0.5) },
    };
    expect(judgeSupportPlace(ft(16), barred)).toMatchObject({
      broken: [{ rule: 'no-support', distance: 0, reason: 'duct' }],
      below: ft(15),
      above: ft(18),
    });
    expect(judgeSupportPlace(ft(13.25), barred)).toMatchObject({
      broken: [{ rule: 'crossing', from: ft(13), distance: ft(0.25), reason: 'fire-wall' }],
      below: ft(11.5),
      above: ft(13.5),
    });
  });

  test('on a grid the nearest legal place is a place of the grid', () => {
    const grid = { ...RUN, structure: { kind: 'grid', pitch: ft(4), offset: ft(3) } } as const;
    expect(judgeSupportPlace(ft(20.2), grid)).toMatchObject({ below: ft(19) });
    expect(judgeSupportPlace(ft(18), { ...grid, others: [ft(1), ft(12), ft(24)] })).toMatchObject({
      below: ft(15),
      above: ft(19),
    });
  });

  test('the window of a hanger is where the floor may shift it without asking', () => {
    expect(supportWindows(RUN)).toEqual([{ from: ft(18), to: ft(19) }]);
  });

  test('a limit that the sheet does not state bars nothing', () => {
    const unknown = {
      ...RUN,
      limits: { maxSpacing: null, maxEndOverhang: null, jointClear: null, fittingWithin: null, crossingClear: null },
    };
    expect(judgeSupportPlace(ft(20), unknown).broken).toEqual([]);
  });

  test('windows and nearest places agree with trying every place one by one', () => {
    const limit = fc.option(fc.integer({ min: 0, max: 12 }), { nil: null });
    const zone = fc
      .tuple(fc.integer({ min: 0, max: 38 }), fc.integer({ min: 1, max: 6 }))
      .map(([from, size]) => ({ from, to: from + size, reason: null }));
    const surroundings = fc.record({
      runLength: fc.constant(40),
      planned: fc.integer({ min: 0, max: 40 }),
      others: fc.uniqueArray(fc.integer({ min: 0, max: 40 }), { maxLength: 5 }),
      joints: fc.array(fc.integer({ min: 0, max: 40 }), { maxLength: 3 }),
      fittings: fc.array(zone, { maxLength: 1 }),
      crossings: fc.array(zone, { maxLength: 1 }),
      noSupport: fc.array(zone, { maxLength: 2 }),
      structure: fc.oneof(
        fc.constant({ kind: 'continuous' } as const),
        fc.record({
          kind: fc.constant('grid' as const),
          pitch: fc.integer({ min: 1, max: 7 }),
          offset: fc.integer({ min: 0, max: 6 }),
        }),
      ),
      limits: fc.record({
        maxSpacing: limit,
        maxEndOverhang: limit,
        jointClear: limit,
        fittingWithin: limit,
        crossingClear: limit,
      }),
    });
    fc.assert(
      fc.property(surroundings, fc.integer({ min: 0, max: 40 }), (around, at) => {
        const legal = Array.from({ length: 41 }, (_, place) => place).filter(
          (place) => judgeSupportPlace(place, around).broken.length === 0,
        );
        const inWindows = Array.from({ length: 41 }, (_, place) => place).filter((place) =>
          supportWindows(around).some(({ from, to }) => from <= place && place <= to),
        );
        expect(inWindows).toEqual(legal);
        const onGrid = (place: number) =>
          around.structure.kind === 'continuous' || (place - around.structure.offset) % around.structure.pitch === 0;
        const { below, above } = judgeSupportPlace(at, around);
        const offered = legal.filter(onGrid);
        expect(offered.filter((place) => place <= at).at(-1) ?? null).toBe(below);
        expect(offered.find((place) => place >= at) ?? null).toBe(above);
      }),
      { numRuns: 2000 },
    );
  });
});

describe('the card of a hanger', () => {
  const set = (more: { measured?: number | null; rodPlumb?: boolean; lockNut?: boolean } = {}) =>
    asked('support', clock('08:00'), {
      kind: 'support-set',
      measured: null,
      rodPlumb: true,
      loadNut: true,
      lockNut: true,
      note: null,
      ...more,
    } as const);
  const accepted = () => asked('support', clock('09:00'), { kind: 'support-accepted', note: null } as const);
  const site = (records: readonly SiteRecord[], rules = RULES) => ({
    card: supportCard(records),
    around: RUN,
    rules,
    now: clock('18:00'),
    version: 1,
  });
  const by = (person: Actor) => person;

  test('goes planned, set, accepted', () => {
    expect(supportCard([]).state).toBe('planned');
    expect(decideSupport(site([]), set(), IBE)).toMatchObject({
      ok: true,
      state: { state: 'set', set: { by: { name: 'R. Ibe' } } },
    });
    expect(decideSupport(site([kept(set(), IBE)]), accepted(), OKAFOR)).toMatchObject({
      ok: true,
      state: { state: 'accepted' },
    });
  });

  test('is not set with a rod out of plumb or without its lock nut', () => {
    expect(decideSupport(site([]), set({ rodPlumb: false, lockNut: false }), IBE)).toMatchObject({
      refusal: { code: 'support.not-ready', args: { missing: ['rod plumb', 'lock nut'] } },
    });
  });

  test('is not set at a measured place that breaks a rule; the refusal offers the nearest legal one', () => {
    expect(decideSupport(site([]), set({ measured: ft(20) + 4 * INCH }), IBE)).toMatchObject({
      refusal: {
        code: 'support.position',
        args: { nearest: ft(19), broken: [{ rule: 'gap-before' }, { rule: 'joint' }] },
      },
    });
  });

  test('moved within its window it is taken, with the word that its load was not worked again', () => {
    expect(decideSupport(site([]), set({ measured: ft(18.5) }), IBE)).toMatchObject({
      ok: true,
      state: { measured: ft(18.5) },
      remarks: [{ code: 'support.load-not-reworked', args: { moved: -ft(0.5) } }],
    });
  });

  test('set where it was planned it is still judged by how its neighbours really stand', () => {
    const around = { ...RUN, others: [ft(1), ft(8), ft(28)] };
    expect(decideSupport({ ...site([]), around }, set(), IBE)).toMatchObject({
      refusal: { code: 'support.position', args: { broken: [{ rule: 'gap-before', distance: ft(11) }] } },
    });
  });

  test('tells which limits the sheet leaves unknown', () => {
    const around = { ...RUN, limits: { ...RUN.limits, maxSpacing: null, jointClear: null } };
    expect(decideSupport({ ...site([]), around }, set(), IBE)).toMatchObject({
      ok: true,
      remarks: [
        { code: 'support.limit-unknown', args: { limit: 'spacing' } },
        { code: 'support.limit-unknown', args: { limit: 'joint-clearance' } },
      ],
    });
  });

  test('is accepted by somebody else where the project asks for a second person', () => {
    expect(decideSupport(site([kept(set(), IBE)]), accepted(), by(IBE))).toMatchObject({
      refusal: { code: 'support.own-work' },
    });
    expect(
      decideSupport(site([kept(set(), IBE)], { ...RULES, secondPerson: 'joints' }), accepted(), IBE),
    ).toMatchObject({ ok: true });
  });

  test('is neither accepted before it is set, nor set or accepted twice', () => {
    expect(decideSupport(site([]), accepted(), OKAFOR)).toMatchObject({ refusal: { code: 'support.not-set' } });
    expect(decideSupport(site([kept(set(), IBE)]), set(), IBE)).toMatchObject({
      refusal: { code: 'support.already-set' },
    });
    expect(decideSupport(site([kept(set(), IBE), kept(accepted(), OKAFOR)]), accepted(), OKAFOR)).toMatchObject({
      refusal: { code: 'support.accepted-already' },
    });
  });
});
