import { describe, expect, test } from 'vitest';
import {
  aBook,
  activity,
  aJob,
  aRun,
  aTap,
  aType,
  checksOf,
  firstRun,
  type JsonObject,
  jobOf,
  jointsOf,
  leg,
  piecesOf,
  printed,
  rulesOf,
} from './job-text.ts';

const covering = (type: JsonObject, run: JsonObject = {}) => piecesOf(firstRun(jobOf(aType(type), aRun(run))));
const noCover = (type: JsonObject, run: JsonObject = {}) => {
  const figures = printed(jobOf(aType(type), aRun(run)));
  return !figures.runs[0]!.layout.ok && checksOf(figures, 'section.no-cover').length > 0;
};

describe('"clearances to a crossing run from its faces; a distance equal to a limit passes"', () => {
  const stock = { stockLengthsMm: [3700, 2300] };
  const wall = (thicknessMm: number) => ({ crossings: [{ atMm: 3000, thicknessMm, kind: 'wall' }] });

  test('joints at 2300 and 3700 just pass 600 from the faces of a wall of 200 at 3000', () => {
    expect(covering({ ...stock, crossing: { jointClearMm: 600, supportClearMm: 0 } }, wall(200))).toEqual([3700, 2300]);
  });
  test('a wall 0.025 mm thicker bars both', () => {
    expect(noCover({ ...stock, crossing: { jointClearMm: 600, supportClearMm: 0 } }, wall(200.025))).toBe(true);
  });
  test('without a stated clearance the wall itself still takes no joint, and the limit is reported', () => {
    const figures = printed(
      jobOf(
        aType({ crossing: { supportClearMm: 0 }, stockLengthsMm: [3000] }),
        aRun({ crossings: [{ atMm: 3000, thicknessMm: 200, kind: 'wall' }] }),
      ),
    );
    expect(rulesOf(figures)).toContain('warning limit.unknown');
    expect(figures.runs[0]!.layout.ok).toBe(false);
  });
});

describe('"noJoint" and fixed taps bar joints, others do not', () => {
  test('a joint may stand at either end of a zone without joints', () => {
    const zone = (fromMm: number, toMm: number) => ({ noJoint: [{ fromMm, toMm }] });
    expect(covering({ stockLengthsMm: [3000] }, zone(3000, 3100))).toEqual([3000, 3000]);
    expect(covering({ stockLengthsMm: [3000] }, zone(2900, 3000))).toEqual([3000, 3000]);
    expect(noCover({ stockLengthsMm: [3000] }, zone(2900, 3000.0125))).toBe(true);
  });
  test('a fixed tap bars joints nearer than the clearance to its centre, and passes at it', () => {
    const tap = { jointClearMm: 400, endClearMm: 0, minSpacingMm: 0, boxLengthMm: 1 };
    const at = (atMm: number, fixed: boolean) => ({ taps: [aTap('A', atMm, { fixed })] });
    expect(covering({ stockLengthsMm: [3000], tap }, at(3400, true))).toEqual([3000, 3000]);
    expect(noCover({ stockLengthsMm: [3000], tap }, at(3399.9875, true))).toBe(true);
    expect(covering({ stockLengthsMm: [3000], tap }, at(3399.9875, false))).toEqual([3000, 3000]);
  });
  test('a fixed tap moves the joint to where it is allowed', () => {
    const tap = { jointClearMm: 400, endClearMm: 0, minSpacingMm: 0, boxLengthMm: 1 };
    expect(covering({ tap }, { legs: [leg(4500)], taps: [aTap('A', 3000, { fixed: true })] })).toEqual([1500, 3000]);
  });
});

describe('"least cost: piece prices, cut surcharge, joints x (kit + joint labour at the crew\'s cost)"', () => {
  const prices = (more: JsonObject) => ({
    prices: {
      sections: [
        { lengthMm: 3000, price: 100 },
        { lengthMm: 1500, price: 40 },
      ],
      ...more,
    },
  });
  test('four cheap sections beat two dear ones', () => {
    expect(covering(prices({}))).toEqual([1500, 1500, 1500, 1500]);
  });
  test('a kit of 20 makes the costs equal (220), and fewer joints win; one of 19 does not', () => {
    expect(covering(prices({ jointKit: 20 }))).toEqual([3000, 3000]);
    expect(covering(prices({ jointKit: 19 }))).toEqual([1500, 1500, 1500, 1500]);
  });
  test('joint hours count at the cost of a productive hour: 0.1 h at 100 / 0.5 is 20', () => {
    const crew = (ratePerHour: number) => [{ role: 'Fitter', number: 1, ratePerHour, effectiveness: 0.5 }];
    const job = (rate: number) => ({
      ...jobOf(aType(prices({ jointKit: 0 })), aRun()),
      labourBook: aBook({ joint: activity(0.1) }, { crew: crew(rate) }),
    });
    expect(piecesOf(firstRun(job(100)))).toEqual([3000, 3000]);
    expect(piecesOf(firstRun(job(95)))).toEqual([1500, 1500, 1500, 1500]);
  });
  test('the price per metre serves a length without a price of its own', () => {
    expect(covering({ prices: { sections: [{ lengthMm: 1500, price: 40 }], sectionPerM: 30 } })).toEqual([
      1500, 1500, 1500, 1500,
    ]);
    expect(covering({ prices: { sections: [{ lengthMm: 1500, price: 40 }], sectionPerM: 26 } })).toEqual([3000, 3000]);
  });
  test('an absent price counts 0 with a note', () => {
    const figures = printed(jobOf(aType({ prices: { sections: [{ lengthMm: 1500, price: 40 }] } }), aRun()));
    expect(piecesOf(figures.runs[0]!)).toEqual([3000, 3000]);
    expect(
      figures.checks.filter(({ severity, message }) => severity === 'note' && message.includes('price')),
    ).not.toEqual([]);
  });
  test('a cut pays the metre and the surcharge: 5 m is two cut lengths dearer than its surcharge, or not', () => {
    const cut = { stockLengthsMm: [2500, 3000], factoryCut: { minMm: 2000, maxMm: 2000, stepMm: 1 } };
    const price = (cutSurcharge: number) => ({
      prices: {
        sections: [
          { lengthMm: 2500, price: 110 },
          { lengthMm: 3000, price: 100 },
        ],
        sectionPerM: 40,
        cutSurcharge,
        jointKit: 0,
      },
    });
    expect(covering({ ...cut, ...price(39) }, { legs: [leg(5000)] })).toEqual([3000, 2000]);
    expect(covering({ ...cut, ...price(40) }, { legs: [leg(5000)] })).toEqual([2500, 2500]);
    expect(covering({ ...cut, ...price(41) }, { legs: [leg(5000)] })).toEqual([2500, 2500]);
  });
});

describe('"then fewer joints; then without a cut before with one; then longer pieces nearer the feed"', () => {
  test('fewer joints go before no cut', () => {
    const type = { stockLengthsMm: [1000], factoryCut: { minMm: 500, maxMm: 2500, stepMm: 500 } };
    expect(covering(type, { legs: [leg(2000)] })).toEqual([2000]);
  });
  test('no cut goes before a longer piece at the feed', () => {
    const type = { stockLengthsMm: [2500, 1500, 1000], factoryCut: { minMm: 3000, maxMm: 3000, stepMm: 1 } };
    expect(covering(type, { legs: [leg(4000)] })).toEqual([2500, 1500]);
  });
  test('of equal coverings the longer piece stands at the feed', () => {
    expect(covering({}, { legs: [leg(7500)] })).toEqual([3000, 3000, 1500]);
    expect(covering({ stockLengthsMm: [4000, 3000, 2000] }, { legs: [leg(6000)] })).toEqual([4000, 2000]);
  });
  test('a cut longer than the stock beside it stands at the feed', () => {
    const type = { stockLengthsMm: [1000], factoryCut: { minMm: 2000, maxMm: 2000, stepMm: 1 } };
    expect(firstRun(jobOf(aType(type), aRun({ legs: [leg(3000)] }))).layout.sections.map(({ kind }) => kind)).toEqual([
      'cut',
      'stock',
    ]);
  });
  test('a length that is stock is not ordered cut', () => {
    const type = { stockLengthsMm: [2000], factoryCut: { minMm: 500, maxMm: 3000, stepMm: 500 } };
    expect(firstRun(jobOf(aType(type), aRun({ legs: [leg(2000)] }))).layout.sections).toEqual([
      { fromMm: 0, toMm: 2000, kind: 'stock', hand: null },
    ]);
  });
});

describe('"at most one factory cut in each straight part between fittings, of length min + k·step"', () => {
  const cut = { stockLengthsMm: [3000], factoryCut: { minMm: 610, maxMm: 3048, stepMm: 1.5875 } };
  test('3614.7625 is 3000 + (610 + 3 x 1.5875); 0.0125 more cannot be had', () => {
    expect(covering(cut, { legs: [leg(3614.7625)] })).toEqual([3000, 614.7625]);
    expect(noCover(cut, { legs: [leg(3614.775)] })).toBe(true);
  });
  test('the longest cut is the last step under maxMm: 610 + 1535 x 1.5875 = 3046.8125', () => {
    expect(covering(cut, { legs: [leg(6046.8125)] })).toEqual([3046.8125, 3000]);
    expect(noCover(cut, { legs: [leg(6048.4)] })).toBe(true);
  });
  test('two cuts are never laid in one part, but each part of an L may have one', () => {
    const one = { stockLengthsMm: [5000], factoryCut: { minMm: 1000, maxMm: 2000, stepMm: 500 } };
    expect(noCover(one, { legs: [leg(3000)] })).toBe(true);
    expect(covering(one, { legs: [leg(1800, 'left'), leg(2300)] })).toEqual([1500, 'elbow', 2000]);
  });
  test('factoryCut null offers no cut', () => {
    expect(noCover({ stockLengthsMm: [3000], factoryCut: null }, { legs: [leg(3610)] })).toBe(true);
  });
});

describe('"End: least cost wins, then nearest to lengthMm; absent: exactly lengthMm"', () => {
  const ended = (lengthMm: number, reachMm: number, hardStopMm: number) => ({
    legs: [leg(lengthMm)],
    end: { reachMm, hardStopMm },
  });
  test('without an end the leg is covered exactly', () => {
    expect(noCover({}, { legs: [leg(7000)] })).toBe(true);
  });
  test('without prices all costs are 0 and the nearest length wins', () => {
    expect(covering({}, ended(7000, 5000, 7600))).toEqual([3000, 3000, 1500]);
    expect(covering({}, ended(6700, 5000, 7600))).toEqual([3000, 3000]);
  });
  test('with prices the cheapest within the window wins, however far from lengthMm', () => {
    const prices = {
      sections: [
        { lengthMm: 3000, price: 100 },
        { lengthMm: 1500, price: 50 },
      ],
      jointKit: 1,
    };
    expect(covering({ prices }, ended(7500, 5000, 7600))).toEqual([3000, 3000]);
    expect(covering({ prices }, ended(7500, 6001, 7600))).toEqual([3000, 3000, 1500]);
  });
  test('equal costs: nearest, at the price of more joints', () => {
    const prices = {
      sections: [
        { lengthMm: 3000, price: 100 },
        { lengthMm: 1500, price: 0 },
      ],
      jointKit: 0,
    };
    expect(covering({ prices }, ended(7000, 5000, 7600))).toEqual([1500, 1500, 1500, 1500, 1500]);
  });
  test('equally near on both sides: fewer joints', () => {
    expect(covering({}, ended(6750, 5000, 7600))).toEqual([3000, 3000]);
  });
  test('reach and hard stop themselves pass', () => {
    expect(covering({}, ended(6700, 6000, 6700))).toEqual([3000, 3000]);
    expect(covering({}, ended(5500, 5500, 6000))).toEqual([3000, 3000]);
    expect(noCover({}, ended(6700, 6000.0125, 7499.9875))).toBe(true);
  });
  test('the window is measured like the last leg: from the corner, elbow leg and all', () => {
    const run = { legs: [leg(3300, 'left'), leg(4000)], end: { reachMm: 3300, hardStopMm: 4000 } };
    const figures = firstRun(jobOf(aType(), aRun(run)));
    expect(piecesOf(figures)).toEqual([3000, 'elbow', 3000]);
    expect(figures.lengthMm).toBe(6600);
    expect(noCover({}, { ...run, end: { reachMm: 3300.0125, hardStopMm: 4000 } })).toBe(true);
  });
  test('a cut that reaches lengthMm exactly goes before a stock length that is 1 mm off, all unpriced', () => {
    const type = { stockLengthsMm: [3000], factoryCut: { minMm: 1000, maxMm: 3500, stepMm: 1 } };
    expect(covering(type, ended(3001, 2900, 3100))).toEqual([3001]);
  });
});

describe('joints and the feed', () => {
  const joins = { feed: { joins: true, weightKg: 0 } };
  test('"with feed.joins the feed has a joint at 0"; without, none', () => {
    expect(jointsOf(firstRun(jobOf(aType(joins), aRun())))).toEqual([0, 3000]);
    expect(jointsOf(firstRun(jobOf(aType(), aRun())))).toEqual([3000]);
  });
  test('a run of one section has no joint, and the joined feed still its own', () => {
    expect(jointsOf(firstRun(jobOf(aType(), aRun({ legs: [leg(3000)] }))))).toEqual([]);
    expect(jointsOf(firstRun(jobOf(aType(joins), aRun({ legs: [leg(3000)] }))))).toEqual([0]);
  });
  test('the joint at 0 counts in the cost of every covering alike, so it changes no choice', () => {
    const prices = {
      sections: [
        { lengthMm: 3000, price: 100 },
        { lengthMm: 1500, price: 40 },
      ],
      jointKit: 20,
    };
    expect(covering({ ...joins, prices })).toEqual([3000, 3000]);
  });
});

test('"layout.ok false: empty lists, incomplete, left out of takeoff and hours"; the drawn length stays', () => {
  const job = {
    ...aJob({ runs: [aRun({ legs: [leg(5000)] }), aRun({ id: 'S' })] }),
    labourBook: aBook({ section: activity(1) }),
  };
  const figures = printed(job);
  expect(figures.runs[0]).toMatchObject({
    lengthMm: 5000,
    layout: { ok: false, incomplete: true, sections: [], joints: [], supports: [], facing: [] },
  });
  expect(new Set(figures.takeoff.map(({ run }) => run))).toEqual(new Set(['S']));
  expect(figures.labour).toMatchObject({ incomplete: true, hours: { likely: 2 }, byRun: [{ run: 'S', hours: 2 }] });
});

describe('a run that cannot be covered says so within seconds, however finely its lengths divide', () => {
  // Stock of 2, 5 and 10 ft rounded to millimetres adds up to nearly every millimetre; cuts go by 1/16 in.
  const type = aType({
    stockLengthsMm: [3048, 1524, 610],
    factoryCut: { minMm: 610, maxMm: 3048, stepMm: 1.5875 },
    prices: { sectionPerM: 24_000, cutSurcharge: 9000, jointKit: 18_500 },
    tap: { jointClearMm: 140, endClearMm: 0, minSpacingMm: 0, boxLengthMm: 1 },
  });
  const reasonOf = (run: JsonObject) => {
    const began = performance.now();
    const [check] = checksOf(printed(jobOf(type, aRun(run))), 'section.no-cover');
    return { seconds: (performance.now() - began) / 1000, message: check!.message };
  };
  test('a zone longer than any section, and an end that may move', () => {
    const run = {
      legs: [leg(36_770)],
      end: { reachMm: 36_000, hardStopMm: 37_400 },
      noJoint: [{ fromMm: 11_000, toMm: 14_100 }],
    };
    const { seconds, message } = reasonOf(run);
    expect(message).toContain('the no-joint zone at 11.000 m keeps joints out of 11.000 m to 14.100 m');
    expect(seconds).toBeLessThan(10);
  });
  test('300 fixed taps that leave 20 mm between them', () => {
    const taps = Array.from({ length: 300 }, (_, i) => aTap(`T${i}`, 200 + i * 300, { fixed: true }));
    const { seconds, message } = reasonOf({ legs: [leg(90_099.9)], taps });
    expect(message).toContain('cannot be covered');
    expect(message.length).toBeLessThan(2000);
    expect(seconds).toBeLessThan(10);
  });
});
