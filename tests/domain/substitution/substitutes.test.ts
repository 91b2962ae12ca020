import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contextFor } from '../../../src/domain/layout/context-for.ts';
import { coverings } from '../../../src/domain/layout/coverings.ts';
import { layoutRun } from '../../../src/domain/layout/layout-run.ts';
import type { BuswayType, Run } from '../../../src/domain/model.ts';
import { arrangements, fills } from '../../../src/domain/substitution/arrangements.ts';
import type { SubstitutionSite } from '../../../src/domain/substitution/site.ts';
import { substituteBy, substitutes } from '../../../src/domain/substitution/substitutes.ts';
import { whatWouldFill } from '../../../src/domain/substitution/what-would-fill.ts';
import { aJob, aRun, aTap, aType, feet } from '../../support/job.ts';

/** A run laid out as it was released, with one piece of it to replace. */
function site(run: Run, index: number, type: BuswayType = aType(), hanging: readonly string[] = []): SubstitutionSite {
  const context = contextFor(aJob({ types: [type], runs: [run] }), run);
  return { run, context, layout: layoutRun(run, context), index, hanging: new Set(hanging) };
}

const straight = (length: number, changes: Partial<Run> = {}) =>
  aRun({ legs: [{ length: feet(length), turn: 'none', tapsMustFace: null }], ...changes });
const tapAt = (at: number, changes: Parameters<typeof aTap>[0] = {}) => aTap({ place: { at: feet(at) }, ...changes });
const inFeet = (lengths: readonly number[]) => lengths.map((length) => length / feet(1));
const laid = (run: Run, type: BuswayType = aType()) => site(run, 0, type).layout;

describe('what a 20 ft section can be made up of', () => {
  it('two of 10 ft first, then three pieces, those first that change fewest hangers, longer ones nearer the feed', () => {
    const { open } = substitutes(site(straight(60), 1));
    expect(
      open.map(({ lengths, hangers }) => [inFeet(lengths), hangers.added.length + hangers.removed.length]),
    ).toEqual([
      [[10, 10], 2],
      [[5, 10, 5], 0],
      [[10, 5, 5], 2],
      [[5, 5, 10], 2],
      [[5, 5, 5, 5], 2],
    ]);
  });

  it('with a factory cut, one of them at most, and none where the straight part has its cut elsewhere', () => {
    const type = aType({ factoryCut: { min: feet(2), max: feet(9), step: feet(1) } });
    const two = substitutes(site(straight(60), 1, aType({ ...type, stockLengths: [feet(20), feet(12)] })));
    expect(two.open.slice(0, 2).map(({ lengths }) => inFeet(lengths))).toEqual([
      [12, 8],
      [8, 12],
    ]);
    const cutElsewhere = site(straight(63), 1, aType({ ...type, stockLengths: [feet(20), feet(12)] }));
    expect(cutElsewhere.layout.pieces.filter(({ kind }) => kind === 'cut')).toHaveLength(1);
    const found = substitutes(cutElsewhere);
    expect(found.cutToSpare).toBe(false);
    expect(found.open).toEqual([]);
    expect(whatWouldFill(cutElsewhere, found)).toBe(
      `With a 12'-0" in it 8'-0" is left, and no stock lengths of type demo-250A-3PN add up to that. A straight part takes one factory cut, and this one has it elsewhere: make that section up of stock lengths first. Another section of 20'-0" would do.`,
    );
  });

  it('is told with what would do, where nothing fills the place', () => {
    const told = (type: BuswayType) => {
      const at = site(straight(60), 1, type);
      return whatWouldFill(at, substitutes(at));
    };
    expect(told(aType({ stockLengths: [feet(20)] }))).toBe(
      `Type demo-250A-3PN comes in no stock length shorter than 20'-0": shorter ones would have to be on its sheet. Another section of 20'-0" would do.`,
    );
    expect(told(aType({ stockLengths: [feet(20), feet(12)] }))).toBe(
      `With a 12'-0" in it 8'-0" is left, and no stock lengths of type demo-250A-3PN add up to that. A factory cut of 8'-0" would do, if the maker cuts this type: the office enters that on its sheet. Another section of 20'-0" would do.`,
    );
    const cut = { min: feet(2), max: feet(3), step: feet(1) };
    expect(told(aType({ stockLengths: [feet(20), feet(12)], factoryCut: cut }))).toBe(
      `With a 12'-0" in it 8'-0" is left, and no stock lengths of type demo-250A-3PN add up to that. A factory cut is 2'-0" to 3'-0" in steps of 1'-0", and none of these fills it. Another section of 20'-0" would do.`,
    );
  });

  it('is not a way where its joint would stand in a wall, and the wall is named', () => {
    const wall = { at: feet(30), thickness: feet(0.5), kind: 'wall' as const, fireRatingMin: 0 };
    const at = site(straight(60, { crossings: [wall] }), 1, aType({ stockLengths: [feet(20), feet(10)] }));
    const found = substitutes(at);
    expect(found.open).toEqual([]);
    expect(found.barred.map(({ at: joint, bar }) => [joint / feet(1), bar.name])).toEqual([[30, `the wall at 30'-0"`]]);
    expect(found.zones.map(({ from, to }) => [from / feet(1), to / feet(1)])).toEqual([[27.75, 32.25]]);
    expect(whatWouldFill(at, found)).toContain('Every way puts a joint where none may stand');
  });
});

describe('sections that somebody asks for', () => {
  it('are taken as the way that is offered, and are none where they do not fill the place', () => {
    const at = site(straight(60), 1);
    const [first] = substitutes(at).open;
    expect(substituteBy(at, [feet(10), feet(10)])).toEqual(first);
    for (const lengths of [[20], [10, 5], [12, 8], [10, 10, 10], [25, -5]])
      expect(substituteBy(at, lengths.map(feet)), lengths.join()).toBeNull();
    const wall = { at: feet(30), thickness: feet(0.5), kind: 'wall' as const, fireRatingMin: 0 };
    expect(substituteBy(site(straight(60, { crossings: [wall] }), 1), [feet(10), feet(10)])).toBeNull();
  });
});

describe('what it does to hangers and tap-offs', () => {
  it('a hanger too near the new joint goes, the others stay where they are', () => {
    const at = site(straight(60), 1);
    const [way] = substitutes(at).open;
    const before = at.layout.supports.map((support) => support.at);
    const after = way!.layout.supports.map((support) => support.at);
    const near = before.filter((place) => Math.abs(place - feet(30)) < feet(1));
    expect(way!.hangers.removed).toEqual(near);
    expect(before.filter((place) => !near.includes(place)).every((place) => after.includes(place))).toBe(true);
    for (const place of after) expect(Math.abs(place - feet(30))).toBeGreaterThanOrEqual(feet(1));
  });

  it('a tap-off too near it goes to its nearest legal place; one that hangs already stops the way', () => {
    const run = straight(60, { taps: [tapAt(30.5), tapAt(35, { id: 'T2' })] });
    const [way] = substitutes(site(run, 1)).open.filter(({ lengths }) => lengths.length === 2);
    // 1'-3" from a joint at 30'-0" is 28'-9" or 31'-3": 1'-9" back or 9" on.
    expect(way?.moves).toEqual([{ id: 'T1', from: feet(30.5), to: feet(31.25) }]);
    expect(way?.layout.findings.filter(({ severity }) => severity === 'stop')).toEqual([]);
    const { open, stopped } = substitutes(site(run, 1, aType(), ['T1']));
    expect(open.some(({ lengths }) => lengths.length === 2)).toBe(false);
    expect(stopped[0]?.stops.map(({ rule, message }) => [rule, message])).toEqual([
      [
        'tap.joint-clear',
        `Tap T1 at 30'-6": it is 6" from joint 3 at 30'-0" and needs 1'-3". Nearest legal places: 28'-9" (1'-9" back) or 31'-3" (9" on).`,
      ],
    ]);
  });

  it('two that no longer fit do not end up on each other', () => {
    const type = aType({ tap: { jointClear: feet(1.25), endClear: feet(1), minSpacing: feet(1), boxLength: feet(1) } });
    const run = straight(60, { taps: [tapAt(30.25), tapAt(31.25, { id: 'T2' }), tapAt(29, { id: 'T0' })] });
    const [way] = substitutes(site(run, 1, type)).open;
    expect(way?.lengths).toEqual([feet(10), feet(10)]);
    expect(way?.layout.findings.filter(({ severity }) => severity === 'stop')).toEqual([]);
    expect(way?.moves.length).toBeGreaterThan(0);
  });
});

describe('the hold', () => {
  const held = (): Run => substitutes(site(straight(60), 1)).open[0]!.run;
  const lengths = (run: Run, type?: BuswayType) => inFeet(laid(run, type).pieces.map(({ from, to }) => to - from));
  const rules = (run: Run) => laid(run).findings.filter(({ rule }) => rule.startsWith('substitution.'));

  it('gives the same run again whenever it is laid out, and says so in a note', () => {
    const at = site(straight(60), 1);
    const [way] = substitutes(at).open;
    const again = layoutRun(way!.run, at.context);
    expect(again).toEqual(way!.layout);
    expect(rules(way!.run).map(({ severity, message }) => [severity, message])).toEqual([
      [
        'note',
        `Kept to what the floor substituted: 10'-0" + 10'-0" from 20'-0" to 40'-0". What costs least is not looked for there, and hangers stay where they stood as long as that is legal.`,
      ],
    ]);
  });

  it('stays when the office lengthens, shortens or changes the run around it', () => {
    const leg = (length: number) => [{ length: feet(length), turn: 'none' as const, tapsMustFace: null }];
    expect(lengths({ ...held(), legs: leg(75) })).toEqual([20, 10, 10, 20, 10, 5]);
    expect(lengths({ ...held(), legs: leg(45) })).toEqual([20, 10, 10, 5]);
    expect(lengths({ ...held(), legs: leg(40) })).toEqual([20, 10, 10]);
  });

  it('is a stop with its remedy where the route does not let it stand, and sections are chosen freely there', () => {
    const wall = { at: feet(30), thickness: feet(0.5), kind: 'wall' as const, fireRatingMin: 0 };
    const blocked = { ...held(), crossings: [wall] };
    expect(lengths(blocked)).toEqual([20, 20, 20]);
    expect(rules(blocked).map(({ severity, message }) => [severity, message])).toEqual([
      [
        'stop',
        `The floor put 10'-0" + 10'-0" from 20'-0" to 40'-0" into this run, and on the route as drawn they cannot stand: a joint at 30'-0" would stand where no joint may. The sections are chosen freely here. Put the route back; or let go of what the floor substituted, on the page of this run, and the next release takes those sections out again.`,
      ],
    ]);
    const short = { ...held(), legs: [{ length: feet(35), turn: 'none' as const, tapsMustFace: null }] };
    const gone = rules(short).find(({ rule }) => rule === 'substitution.lost');
    expect(gone?.message).toContain(`10'-0" from 30'-0" to 40'-0" into this run`);
    expect(gone?.message).toContain('the run ends before it');
  });

  it('is lost where the type has no such section any more', () => {
    const type = aType({ stockLengths: [feet(20), feet(5)] });
    const layout = laid(held(), type);
    expect(layout.findings.find(({ rule }) => rule === 'substitution.lost')?.message).toContain(
      `type demo-250A-3PN has no section of 10'-0" any more`,
    );
  });

  it('of a substituted section again: the sections that stand now are held, no others', () => {
    const first = held();
    const second = substitutes(site(first, 2)).open[0]!;
    expect(inFeet(second.lengths)).toEqual([5, 5]);
    expect(second.run.fieldHold?.sections.map(({ from, to }) => inFeet([from, to]))).toEqual([
      [20, 30],
      [30, 35],
      [35, 40],
    ]);
  });

  it('is compared with nothing, since nothing was chosen by cost', () => {
    const at = site(held(), 0);
    expect(coverings(at.run, at.context)).toMatchObject({ held: true, compared: false, coverings: [{ loss: null }] });
    const wall = { at: feet(30), thickness: feet(0.5), kind: 'wall' as const, fireRatingMin: 0 };
    const lost = site({ ...held(), crossings: [wall] }, 0);
    expect(coverings(lost.run, lost.context)).toMatchObject({ held: false, compared: true });
  });
});

/** Every order of so many sections out of these that adds up, by trying them all. */
function bruteForce(length: number, pieces: number, stock: readonly number[], cuts: readonly number[]): string[] {
  const all = [...stock.map((one) => ({ one, cut: 0 })), ...cuts.map((one) => ({ one, cut: 1 }))];
  const found: string[] = [];
  const go = (left: number, count: number, spent: number, soFar: readonly number[]): void => {
    if (count === 0 && left === 0) found.push(soFar.join('+'));
    if (count === 0) return;
    for (const { one, cut } of all)
      if (one <= left && spent + cut <= 1) go(left - one, count - 1, spent + cut, [...soFar, one]);
  };
  go(length, pieces, 0, []);
  return [...new Set(found)].sort();
}

describe('against a brute force written here', () => {
  const lengthsOf = fc.uniqueArray(fc.integer({ min: 1, max: 12 }), { minLength: 1, maxLength: 4 });
  it('finds every order of two to four sections, each once', () => {
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 24 }), lengthsOf, fc.option(lengthsOf), (length, stock, cuts) => {
        const factoryCut = cuts === null ? null : { min: Math.min(...cuts), max: Math.max(...cuts), step: 1 };
        const shorter = stock.filter((one) => one < length);
        const cuttable = [...Array(13).keys()].filter(
          (one) => factoryCut !== null && one >= factoryCut.min && one <= factoryCut.max && !shorter.includes(one),
        );
        for (const pieces of [2, 3, 4]) {
          const ours = [...arrangements(length, pieces, { stockLengths: stock, factoryCut })].map((way) =>
            way.join('+'),
          );
          const unique = [...new Set(ours)].sort();
          for (const way of unique)
            expect(fills(way.split('+').map(Number), length, { stockLengths: stock, factoryCut })).toBe(true);
          expect(unique).toEqual(
            bruteForce(
              length,
              pieces,
              shorter,
              cuttable.filter((one) => one < length),
            ),
          );
          expect(ours).toHaveLength(unique.length);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('of any run: length kept, all other pieces stay, no joint in a forbidden zone, hangers and tap-offs legal', () => {
    const runs = fc.record({
      shape: fc.constantFrom('straight', 'corner', 'centre', 'free end'),
      cut: fc.boolean(),
      lengths: fc.array(fc.integer({ min: 5, max: 60 }), { minLength: 2, maxLength: 2 }),
      wall: fc.integer({ min: 2, max: 110 }),
      taps: fc.uniqueArray(fc.integer({ min: 4, max: 220 }), { maxLength: 8 }),
      index: fc.nat(),
      blocked: fc.integer({ min: 0, max: 100 }),
    });
    let chosen = 0;
    fc.assert(
      fc.property(runs, ({ shape, cut, lengths, wall, taps, index, blocked }) => {
        const type = aType({ factoryCut: cut ? { min: feet(2), max: feet(10), step: feet(0.5) } : null });
        const first = feet(cut ? lengths[0]! : 5 * Math.ceil(lengths[0]! / 5));
        const second = feet(cut ? lengths[1]! : 5 * Math.ceil(lengths[1]! / 5));
        const leg = (length: number, turn: 'none' | 'left') => ({ length, turn, tapsMustFace: null });
        const total = first + second;
        const run = aRun(
          {
            // The elbow takes a foot off the legs on both its sides.
            legs:
              shape === 'corner' ? [leg(first + feet(1), 'left'), leg(second + feet(1), 'none')] : [leg(total, 'none')],
            end: shape === 'free end' ? { reach: total - feet(2), hardStop: total + feet(3) } : null,
            crossings:
              feet(wall) < total - feet(1)
                ? [{ at: feet(wall), thickness: feet(0.5), kind: 'wall' as const, fireRatingMin: 0 }]
                : [],
            noJoint: feet(blocked + 3) < total ? [{ from: feet(blocked), to: feet(blocked + 3), reason: null }] : [],
            taps: taps
              .filter((at) => feet(at / 2 + 2) < total)
              .map((at, place) => tapAt(at / 2 + 0.3, { id: `T${place}`, fixed: place % 3 === 0 })),
          },
          shape === 'centre' ? { kind: 'centre', at: first } : {},
        );
        const layout = laid(run, type);
        const straightOnes = [...layout.pieces.keys()].filter((place) => layout.pieces[place]!.hand === null);
        fc.pre(layout.ok && !layout.findings.some(({ severity }) => severity === 'stop') && straightOnes.length > 0);
        const at = site(run, straightOnes[index % straightOnes.length]!, type);
        const piece = layout.pieces[at.index]!;
        for (const way of substitutes(at).open) {
          chosen += 1;
          expect(way.lengths.reduce((sum, one) => sum + one, 0)).toBe(piece.to - piece.from);
          expect(way.layout.length).toBe(layout.length);
          const names = (pieces: typeof layout.pieces) => pieces.map(({ from, to, kind }) => `${kind} ${from}-${to}`);
          expect(names(way.layout.pieces)).toEqual(
            expect.arrayContaining(names(layout.pieces.filter((one) => one !== piece))),
          );
          expect(way.layout.pieces).toHaveLength(layout.pieces.length - 1 + way.lengths.length);
          const corner = shape === 'corner' ? first + feet(1) : shape === 'centre' ? first : Number.POSITIVE_INFINITY;
          for (const isHere of [(to: number) => to <= corner, (to: number) => to > corner])
            expect(way.layout.pieces.filter(({ kind, to }) => kind === 'cut' && isHere(to)).length).toBeLessThan(2);
          for (const joint of way.layout.joints) {
            for (const { at: centre, thickness } of run.crossings)
              expect(Math.abs(joint.at - centre)).toBeGreaterThanOrEqual(thickness / 2 + feet(2));
            for (const { from, to } of run.noJoint) expect(joint.at > from && joint.at < to).toBe(false);
            for (const tap of way.run.taps) {
              if ('at' in tap.place) expect(Math.abs(tap.place.at - joint.at)).toBeGreaterThanOrEqual(feet(1.25));
            }
            for (const support of way.layout.supports)
              expect(Math.abs(support.at - joint.at)).toBeGreaterThanOrEqual(feet(1));
          }
          const places = way.layout.supports.map((support) => support.at);
          for (const [place, next] of places.slice(1).entries())
            expect(next - places[place]!).toBeLessThanOrEqual(feet(10));
          for (const gone of way.hangers.removed)
            expect(way.layout.joints.some((joint) => Math.abs(joint.at - gone) < feet(1))).toBe(true);
          expect(layoutRun(way.run, at.context)).toEqual(way.layout);
        }
      }),
      { numRuns: 100 },
    );
    expect(chosen).toBeGreaterThan(50);
  });
});
