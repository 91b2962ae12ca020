import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jointLabourCost } from '../../../src/domain/layout/joint-labour-cost.ts';
import type { Run } from '../../../src/domain/model.ts';
import { aLabourBook, anActivity, aRun, aTap, feet } from '../../support/job.ts';
import { inFeet, laidOut, layoutType, lengthsOf, messages, placesOf, rulesOf, straightRun } from './l-run.ts';

describe('the joints of a run', () => {
  it('are one fewer than its pieces when the feed does not join', () => {
    const type = layoutType({ feed: { joins: false, weightKg: 0 } });
    expect(placesOf(laidOut(straightRun(70), type).joints)).toEqual([20, 40, 60]);
  });

  it('of a centre feed that joins are two at its distance, in place of the halves’ own, with longer pieces nearer the feed', () => {
    const layout = laidOut(aRun({ legs: [leg(65)] }, { kind: 'centre', at: feet(35) }));
    expect(lengthsOf(layout.pieces)).toEqual([5, 10, 20, 20, 10]);
    expect(placesOf(layout.joints)).toEqual([5, 15, 35, 35, 55]);
  });

  it('of a centre feed without a distance stand in the middle, and are one where it does not join', () => {
    const type = layoutType({ feed: { joins: false, weightKg: 0 } });
    const layout = laidOut(aRun({ legs: [leg(40)] }, { kind: 'centre' }), type);
    expect(placesOf(layout.joints)).toEqual([20]);
  });

  it('of a centre feed at the end of the run, or inside a fitting, are a stop that says where it may stand', () => {
    expect(
      messages(laidOut(aRun({ legs: [leg(40)] }, { kind: 'centre', at: feet(40) })), 'section.no-cover')[0],
    ).toContain('not between the two ends');
    const legs: Run['legs'] = [leg(21, 'left'), leg(21)];
    expect(messages(laidOut(aRun({ legs }, { kind: 'centre', at: feet(21.5) })), 'section.no-cover')[0]).toContain(
      `inside the elbow at 21'-0": move it to 20'-0" or 22'-0"`,
    );
  });

  it('stand directly between two fittings that touch', () => {
    const legs = [leg(21, 'left'), leg(2, 'right'), leg(21)];
    const layout = laidOut(aRun({ legs }));
    expect(placesOf(layout.joints)).toEqual([0, 20, 22, 24]);
    expect(layout.supports.length).toBeGreaterThan(0);
  });

  it('cannot be had where two fittings overlap: a stop says by how much', () => {
    const legs = [leg(21, 'left'), leg(1.5, 'right'), leg(21)];
    expect(messages(laidOut(aRun({ legs })), 'section.no-cover')[0]).toContain(`there is 6" too little room`);
  });

  it('are never inside a wall, even where its clearance is not stated, and that is warned of', () => {
    const crossings = [{ at: feet(20), thickness: feet(1), kind: 'wall' as const, fireRatingMin: 0 }];
    const layout = laidOut(
      straightRun(40, { crossings }),
      layoutType({ crossing: { jointClear: null, supportClear: 0 } }),
    );
    expect(lengthsOf(layout.pieces)).toEqual([10, 20, 10]);
    expect(messages(layout, 'limit.unknown').join()).toContain(
      'The clearance of a joint from a wall or floor is not stated',
    );
  });

  it('pass exactly at the limit of a crossing, a zone and a fixed tap', () => {
    const type = layoutType({ stockLengths: [feet(20)] });
    const crossings = [{ at: feet(22.5), thickness: feet(1), kind: 'wall' as const, fireRatingMin: 0 }];
    const noJoint = [{ from: feet(40), to: feet(45), reason: 'no access' }];
    const taps = [aTap({ fixed: true, place: { at: feet(58.75) } })];
    expect(laidOut(straightRun(80, { crossings, noJoint, taps }), type).ok).toBe(true);
  });
});

describe('the open end of a run', () => {
  it('ends where it costs least, and of equal cost nearest to the length drawn', () => {
    const end = { reach: feet(55), hardStop: feet(72) };
    const unpriced = laidOut(straightRun(68, { end }));
    expect(inFeet(unpriced.length)).toBe(70);
    const type = layoutType();
    const priced = { ...type, prices: { ...type.prices, sectionPerM: 10_000 } };
    expect(inFeet(laidOut(straightRun(68, { end }), priced).length)).toBe(55);
  });

  it('may use a factory cut to end exactly where it is drawn, when that costs nothing', () => {
    const type = layoutType({ factoryCut: { min: feet(2), max: feet(10), step: feet(1) / 192 } });
    const end = { reach: feet(55), hardStop: feet(72) };
    const layout = laidOut(straightRun(67.5, { end }), type);
    expect(inFeet(layout.length)).toBe(67.5);
    expect(layout.pieces.filter((piece) => piece.kind === 'cut')).toHaveLength(1);
  });

  it('is the face of an elbow where no section may join on to it and none has to', () => {
    const legs = [leg(21, 'left'), leg(11)];
    const noJoint = [{ from: feet(21.5), to: feet(22.5), reason: null }];
    const mayEndAtElbow = { reach: feet(1), hardStop: feet(21) };
    expect(lengthsOf(laidOut(aRun({ legs, end: mayEndAtElbow })).pieces)).toEqual([20, 2, 10]);
    expect(lengthsOf(laidOut(aRun({ legs, end: mayEndAtElbow, noJoint })).pieces)).toEqual([20, 2]);
    const mustGoOn = { reach: feet(2), hardStop: feet(21) };
    expect(laidOut(aRun({ legs, end: mustGoOn, noJoint })).ok).toBe(false);
  });

  it('of a branch of one leg is measured from the parent’s centre line', () => {
    const parent = straightRun(70, { id: 'P' });
    const feed = { kind: 'tee' as const, fromRun: 'P', at: feet(26), branchSide: 'left' as const };
    const branch = aRun({ id: 'B', legs: [leg(14)], end: { reach: feet(11), hardStop: feet(16) } }, feed);
    expect(inFeet(laidOut(branch, layoutType(), { runs: [parent, branch] }).length)).toBe(15);
  });
});

describe('what wins', () => {
  const type = layoutType();
  const priced = (prices: Partial<typeof type.prices>) => layoutType({ prices: { ...type.prices, ...prices } });

  it('weighs dearer long pieces against the joints they save', () => {
    const sections = [
      { length: feet(20), price: 300 },
      { length: feet(10), price: 100 },
      { length: feet(5), price: 60 },
    ];
    expect(lengthsOf(laidOut(straightRun(40), priced({ sections, jointKit: 50 })).pieces)).toEqual([10, 10, 10, 10]);
    expect(lengthsOf(laidOut(straightRun(40), priced({ sections, jointKit: 200 })).pieces)).toEqual([20, 20]);
  });

  it('is reckoned in full: pieces, joints, kits and labour', () => {
    const labourBook = aLabourBook({ activities: [anActivity('joint', 0.6)], crew });
    const layout = laidOut(straightRun(40), priced({ sectionPerM: 10_000, jointKit: 50 }), { labourBook });
    expect(layout.cost).toEqual({
      pieces: 2 * 60_960,
      cuts: 0,
      joints: 2,
      jointKit: 100,
      jointLabour: 12_258,
      total: 134_278,
    });
    expect(rulesOf(layout)).not.toContain('price.absent');
  });

  // By hand: 20 + 20 ft of stock and a cut of 3 ft; 43 ft at 100.00 a metre, one surcharge of 7.00, three joints at 0.50.
  it('has the surcharge of a factory cut once for each cut', () => {
    const type = {
      ...priced({ sectionPerM: 10_000, cutSurcharge: 700, jointKit: 50 }),
      factoryCut: { min: feet(2), max: feet(10), step: 127 },
    };
    expect(laidOut(straightRun(43), type).cost).toEqual({
      pieces: 131_064,
      cuts: 700,
      joints: 3,
      jointKit: 150,
      jointLabour: 0,
      total: 131_914,
    });
  });

  it('names in one note what has no price', () => {
    expect(messages(laidOut(straightRun(40), priced({ sectionPerM: 1 })), 'price.absent')).toEqual([
      'No price is given for joint kit and joint labour: each counted 0 when the sections were chosen. Enter prices to choose by cost.',
    ]);
  });

  it('warns that a length without a price looks free beside those that have one', () => {
    const type = priced({ sections: [{ length: feet(20), price: 1 }] });
    expect(messages(laidOut(straightRun(40), type), 'price.absent')[0]).toMatch(
      /^No price is given for section .*: each counted 0 when the sections were chosen\. Other lengths have a price, so one without looks free/,
    );
    expect(messages(laidOut(straightRun(40), priced({})), 'price.absent')[0]).not.toContain('looks free');
  });
});

describe('the labour of one joint', () => {
  // Job map 0.7: 332 / 3.25 = 102.15 an hour (one foreman at half effect, two journeymen, one apprentice at 0.75), x 0.6 h.
  it('is likely hours at the cost of a productive hour, rounded once', () => {
    expect(jointLabourCost(aLabourBook({ activities: [anActivity('joint', 0.6)], crew }), 250)).toBe(6129);
  });

  it('is nothing without a labour book, a crew or the activity', () => {
    expect([
      jointLabourCost(null, 250),
      jointLabourCost(aLabourBook(), 250),
      jointLabourCost(aLabourBook({ activities: [], crew }), 250),
    ]).toEqual([0, 0, 0]);
  });
});

describe('any run', () => {
  it('adds up exactly, joints where pieces meet and out of every bar, no gap between hangers over the limit', () => {
    fc.assert(
      fc.property(anyRun, (run) => {
        const layout = laidOut(run, layoutType({ factoryCut: { min: feet(2), max: feet(10), step: feet(0.25) } }));
        if (!layout.ok) return;
        expect(layout.pieces.map((piece) => piece.from)).toEqual([
          0,
          ...layout.pieces.slice(0, -1).map((piece) => piece.to),
        ]);
        expect(layout.pieces.at(-1)?.to).toBe(layout.length);
        const walls = run.crossings.map(({ at, thickness }) => ({ at, reach: thickness / 2 + feet(2) }));
        for (const { at } of layout.joints)
          for (const wall of walls) expect(Math.abs(at - wall.at)).toBeGreaterThanOrEqual(wall.reach);
        const gaps = layout.supports.slice(1).map((support, i) => support.at - layout.supports[i]!.at);
        expect(Math.max(0, ...gaps)).toBeLessThanOrEqual(feet(10));
        for (const { at } of layout.supports)
          for (const joint of layout.joints) expect(Math.abs(at - joint.at)).toBeGreaterThanOrEqual(feet(1));
      }),
      { numRuns: 300 },
    );
  });
});

const crew = [
  { role: 'foreman', number: 1, ratePerHour: 9800, burdenPercent: 0, effectiveness: 0.5 },
  { role: 'journeyman', number: 2, ratePerHour: 8800, burdenPercent: 0, effectiveness: 1 },
  { role: 'apprentice', number: 1, ratePerHour: 5800, burdenPercent: 0, effectiveness: 0.75 },
];

function leg(length: number, turn: Run['legs'][number]['turn'] = 'none'): Run['legs'][number] {
  return { length: feet(length), turn, tapsMustFace: null };
}

const anyRun = fc
  .record({
    legs: fc.array(fc.tuple(fc.integer({ min: 16, max: 200 }), fc.constantFrom('left' as const, 'right' as const)), {
      minLength: 0,
      maxLength: 3,
    }),
    last: fc.integer({ min: 16, max: 200 }),
    walls: fc.array(fc.tuple(fc.integer({ min: 0, max: 200 }), fc.integer({ min: 1, max: 6 })), { maxLength: 3 }),
  })
  .map(({ legs, last, walls }) =>
    aRun({
      legs: [...legs.map(([quarters, turn]) => leg(quarters / 4, turn)), leg(last / 4)],
      crossings: walls.map(([at, thickness]) => ({
        at: feet(at / 2),
        thickness: feet(thickness / 4),
        kind: 'wall',
        fireRatingMin: 0,
      })),
    }),
  );
