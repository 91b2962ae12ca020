import { describe, expect, test } from 'vitest';
import {
  aBranch,
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
} from './job-text.ts';

const LIMITS = { jointClearMm: 400, endClearMm: 300, minSpacingMm: 250, boxLengthMm: 200 };
const tapRules = (taps: JsonObject[], limits: JsonObject = {}, run: JsonObject = {}) =>
  printed(jobOf(aType({ tap: { ...LIMITS, ...limits } }), aRun({ taps, ...run })))
    .checks.filter(({ rule }) => rule.startsWith('tap.'))
    .map(({ rule, severity, atMm }) => [severity, rule, atMm]);

describe('"A distance equal to a limit passes"; limits are to the tap\'s centre', () => {
  test('joint at 3000, 400 clear: 2600 and 3400 pass, 1/80 mm nearer does not', () => {
    expect(tapRules([aTap('A', 2600), aTap('B', 3400)])).toEqual([]);
    expect(tapRules([aTap('A', 2600.0125)])).toEqual([['stop', 'tap.joint-clear', 2600.0125]]);
    expect(tapRules([aTap('A', 3399.9875)])).toEqual([['stop', 'tap.joint-clear', 3399.9875]]);
  });
  test('300 from either end passes', () => {
    expect(tapRules([aTap('A', 300), aTap('B', 5700)])).toEqual([]);
    expect(tapRules([aTap('A', 299.9875)])).toEqual([['stop', 'tap.end-clear', 299.9875]]);
    expect(tapRules([aTap('A', 5700.0125)])).toEqual([['stop', 'tap.end-clear', 5700.0125]]);
  });
  test('250 centre to centre passes; boxes of 200 that just touch do not overlap', () => {
    expect(tapRules([aTap('A', 1000), aTap('B', 1250)])).toEqual([]);
    expect(tapRules([aTap('A', 1000), aTap('B', 1249.9875)])).toMatchObject([['stop', 'tap.spacing', 1249.9875]]);
    expect(tapRules([aTap('A', 1000), aTap('B', 1200)], { minSpacingMm: 0 })).toEqual([]);
    expect(tapRules([aTap('A', 1000), aTap('B', 1199.9875)], { minSpacingMm: 0 })).toMatchObject([
      ['stop', 'tap.spacing', 1199.9875],
    ]);
  });
  test('"boxLengthMm serves overlap alone": a box over a joint or past the end is no matter', () => {
    expect(tapRules([aTap('A', 3000), aTap('B', 0)], { jointClearMm: 0, endClearMm: 0, boxLengthMm: 1000 })).toEqual(
      [],
    );
  });
  test('two taps in one place are too near each other even where no spacing is stated', () => {
    expect(tapRules([aTap('A', 1000), aTap('B', 1000)], { minSpacingMm: 0, boxLengthMm: 1 })).toHaveLength(1);
  });
  test('the joint of a joined feed is one like the others', () => {
    const type = aType({ tap: { ...LIMITS, endClearMm: 0 }, feed: { joins: true, weightKg: 0 } });
    const rules = (atMm: number) =>
      checksOf(printed(jobOf(type, aRun({ taps: [aTap('A', atMm)] }))), 'tap.joint-clear');
    expect(rules(399)).toMatchObject([{ severity: 'stop', atMm: 399 }]);
    expect(rules(400)).toEqual([]);
  });
});

describe('"others are checked once the covering is chosen, with the nearest legal place"', () => {
  const message = (taps: JsonObject[], rule: string, limits: JsonObject = {}) =>
    checksOf(printed(jobOf(aType({ tap: { ...LIMITS, ...limits } }), aRun({ taps }))), rule)[0]!.message;
  test('3100 may go to 3400 or back to 2600', () => {
    expect(message([aTap('A', 3100)], 'tap.joint-clear')).toMatch(/3\.400 m/);
  });
  test('a neighbour in the way moves the offer on', () => {
    // 3400 is 50 from the tap at 3450, so 3200..3700 are its own; the nearest place is 2600.
    expect(message([aTap('A', 3100), aTap('B', 3450)], 'tap.joint-clear')).toMatch(/2\.600 m/);
  });
  test('past the end it is offered the last legal place, once', () => {
    expect(message([aTap('A', 6100)], 'tap.end-clear').match(/5\.700 m/g)).toHaveLength(1);
    expect(message([aTap('A', 7000)], 'tap.end-clear', { endClearMm: 0 })).toMatch(
      /place: 6\.000 m \(1\.000 m back\)\.$/,
    );
  });
});

describe('"near is the plan position of what it serves; the distance is that of the nearest point of the run"', () => {
  /** Where the tap comes to stand: no place is 9 m from both ends, so its check names it. */
  const placeOf = (xMm: number, yMm: number, run: JsonObject = {}) => {
    const tap: JsonObject = { id: 'A', near: { xMm, yMm }, phases: 'L1', deviceA: 16, loadA: 5, weightKg: 0 };
    const type = aType({ tap: { ...LIMITS, jointClearMm: 0, endClearMm: 9000 } });
    return checksOf(printed(jobOf(type, aRun({ taps: [tap], ...run }))), 'tap.end-clear')[0]!.atMm;
  };
  const corner = { legs: [leg(3300, 'left'), leg(3300)] };
  test('square to a straight run, and off its ends', () => {
    expect(placeOf(1234.5, -800)).toBe(1234.5);
    expect(placeOf(-500, 20)).toBe(0);
    expect(placeOf(9000, 20)).toBe(6000);
  });
  test('round a corner at (3300, 0): the nearer leg', () => {
    expect(placeOf(1000, -500, corner)).toBe(1000);
    expect(placeOf(5000, 100, corner)).toBe(3400);
    expect(placeOf(3500, -100, corner)).toBe(3300);
  });
  test('as near to both legs: the nearer to the feed', () => {
    expect(placeOf(3000, 300, corner)).toBe(3000);
  });
  test('the start and the heading count: from (1000, 2000) towards 90°', () => {
    expect(placeOf(1700, 3500, { start: { xMm: 1000, yMm: 2000, zMm: 3000 }, headingDeg: 90 })).toBe(1500);
  });
  test('a heading of 30°: the foot of the square, to 1/80 mm', () => {
    // 2000 along 30° and 500 square to it.
    const x = 2000 * Math.cos(Math.PI / 6) - 500 * Math.sin(Math.PI / 6);
    const y = 2000 * Math.sin(Math.PI / 6) + 500 * Math.cos(Math.PI / 6);
    expect(placeOf(x, y, { headingDeg: 30 })).toBe(2000);
  });
  test('a riser is one point in plan', () => {
    // 3300 east, 3600 up, then on: 2000 east of the riser is 6900 + 2000 along.
    const riser = { legs: [leg(3300, 'up'), leg(3600, 'down'), leg(3300)] };
    expect(placeOf(5300, 400, riser)).toBe(8900);
    expect(placeOf(3300, 400, riser)).toBe(3300);
  });
  test("on a branch distances begin at the face of the tee's arm", () => {
    const tap: JsonObject = { id: 'A', near: { xMm: 3000, yMm: 2300 }, phases: 'L1', deviceA: 16, loadA: 5 };
    const type = aType({ tap: { ...LIMITS, jointClearMm: 0, endClearMm: 9000 } });
    const branch = aBranch('B', 'R', 3300, 'left', { legs: [leg(3300)], taps: [tap] });
    const figures = printed(jobOf(type, aRun({ legs: [leg(6600)] }), branch));
    expect(checksOf(figures, 'tap.end-clear')).toMatchObject([{ run: 'B', atMm: 2000 }]);
  });
  test('a fixed tap by its plan position bars a joint all the same', () => {
    const tap: JsonObject = {
      id: 'A',
      near: { xMm: 3000, yMm: 900 },
      fixed: true,
      phases: 'L1',
      deviceA: 16,
      loadA: 5,
    };
    const run = firstRun(jobOf(aType({ tap: LIMITS }), aRun({ legs: [leg(4500)], taps: [tap] })));
    expect(piecesOf(run)).toEqual([1500, 3000]);
    expect(jointsOf(run)).toEqual([1500]);
  });
});

test('a tap on an elbow or in a wall is told', () => {
  const run = {
    legs: [leg(3300, 'left'), leg(3300)],
    crossings: [{ atMm: 1000, thicknessMm: 100, kind: 'wall' }],
  };
  const rules = tapRules([aTap('A', 3300), aTap('B', 1000)], { jointClearMm: 0 }, run);
  expect(rules.map(([severity, , at]) => [severity, at])).toEqual([
    ['stop', 1000],
    ['stop', 3300],
  ]);
});

test('5,000 taps on one run are judged within seconds', () => {
  const taps = Array.from({ length: 5000 }, (_, i) => aTap(`T${i}`, 100 + i * 20, { fixed: i % 100 === 0 }));
  const began = performance.now();
  const figures = printed(jobOf(aType({ tap: LIMITS }), aRun({ legs: [leg(102_000)], taps })));
  expect(checksOf(figures, 'tap.spacing').length).toBeGreaterThan(2000);
  expect(performance.now() - began).toBeLessThan(10_000);
});
