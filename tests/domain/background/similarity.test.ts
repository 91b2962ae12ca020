import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  coveredBy,
  lengthPerPixel,
  type Similarity,
  similarityFrom,
  toPixel,
  toPlace,
  turnedDegrees,
} from '../../../src/domain/background/similarity.ts';

const at = (px: number, py: number, x: number, y: number) => ({ pixel: { x: px, y: py }, place: { x, y } });

// Worked by hand on squared paper; pixels count down, the plan counts up.
describe('a picture calibrated by two points', () => {
  it('lies north up when both points say so: 100 pixels to the right are 1000 to the east', () => {
    const placed = similarityFrom([at(10, 50, 2000, 3000), at(110, 50, 3000, 3000)]);
    expect(lengthPerPixel(placed)).toBe(10);
    expect(turnedDegrees(placed)).toBe(0);
    expect(toPlace(placed, { x: 10, y: 40 })).toEqual({ x: 2000, y: 3100 }); // ten pixels up are 100 to the north
    expect(toPlace(placed, { x: 0, y: 0 })).toEqual({ x: 1900, y: 3500 });
  });

  it('is turned by the 3-4-5 triangle: 5 pixels to the right go 3 east and 4 north', () => {
    const placed = similarityFrom([at(0, 0, 0, 0), at(5, 0, 3, 4)]);
    expect(lengthPerPixel(placed)).toBeCloseTo(1, 12);
    expect(turnedDegrees(placed)).toBeCloseTo(53.1301, 4); // the larger angle of the triangle, atan(4/3)
    // Five pixels down are the same line turned clockwise by a right angle: 4 east and 3 south.
    const down = toPlace(placed, { x: 0, y: 5 });
    expect(down.x).toBeCloseTo(4, 12);
    expect(down.y).toBeCloseTo(-3, 12);
  });

  it('a sheet that lies on its side has its right edge to the north', () => {
    const placed = similarityFrom([at(0, 0, 500, 500), at(0, 200, 900, 500)]);
    expect(turnedDegrees(placed)).toBeCloseTo(90, 12); // down on the sheet is east, so right is north
    expect(lengthPerPixel(placed)).toBe(2);
    const right = toPlace(placed, { x: 10, y: 0 });
    expect(right.x).toBeCloseTo(500, 9);
    expect(right.y).toBeCloseTo(520, 9);
  });

  it('upside down is half a turn', () => {
    const placed = similarityFrom([at(0, 0, 0, 0), at(100, 0, -100, 0)]);
    expect(Math.abs(turnedDegrees(placed))).toBeCloseTo(180, 12);
    const down = toPlace(placed, { x: 0, y: 30 });
    expect(down.x).toBeCloseTo(0, 12);
    expect(down.y).toBeCloseTo(30, 12);
  });

  it('covers a window of the plan: a turned picture needs a larger one', () => {
    const straight = similarityFrom([at(0, 0, 0, 0), at(10, 0, 10, 0)]);
    expect(coveredBy(straight, { width: 10, height: 4 })).toEqual({ left: 0, right: 10, low: -4, high: 0 });
    const turned = similarityFrom([at(0, 0, 0, 0), at(5, 0, 3, 4)]);
    const window = coveredBy(turned, { width: 5, height: 5 }); // the square on the hypotenuse: 7 by 7
    expect(window.right - window.left).toBeCloseTo(7, 12);
    expect(window.high - window.low).toBeCloseTo(7, 12);
  });
});

const pixel = fc.record({ x: fc.integer({ min: 0, max: 6000 }), y: fc.integer({ min: 0, max: 6000 }) });
const place = fc.record({
  x: fc.integer({ min: -8_000_000, max: 8_000_000 }),
  y: fc.integer({ min: -8_000_000, max: 8_000_000 }),
});
const calibration = fc
  .tuple(fc.record({ pixel, place }), fc.record({ pixel, place }))
  .filter(
    ([a, b]) =>
      Math.hypot(a.pixel.x - b.pixel.x, a.pixel.y - b.pixel.y) >= 50 &&
      Math.hypot(a.place.x - b.place.x, a.place.y - b.place.y) >= 80_000,
  );
/** So far may doubles be off over a building: a hundredth of 1/80 mm, or the same part of a pixel. */
const TINY = 0.01;

describe('any calibration', () => {
  it('puts both of its points where it was told', () => {
    fc.assert(
      fc.property(calibration, (points) => {
        const placed = similarityFrom(points);
        for (const point of points) {
          const found = toPlace(placed, point.pixel);
          expect(Math.hypot(found.x - point.place.x, found.y - point.place.y)).toBeLessThan(TINY);
        }
      }),
    );
  });

  it('leads from any pixel to a place and back to the pixel', () => {
    fc.assert(
      fc.property(calibration, pixel, (points, asked) => {
        const placed = similarityFrom(points);
        const back = toPixel(placed, toPlace(placed, asked));
        expect(Math.hypot(back.x - asked.x, back.y - asked.y)).toBeLessThan(TINY);
      }),
    );
  });

  it('keeps every distance in proportion and turns no picture over', () => {
    fc.assert(
      fc.property(calibration, pixel, pixel, (points, one, other) => {
        const placed = similarityFrom(points);
        const [p, q] = [toPlace(placed, one), toPlace(placed, other)];
        const expected = lengthPerPixel(placed) * Math.hypot(one.x - other.x, one.y - other.y);
        expect(Math.abs(Math.hypot(p.x - q.x, p.y - q.y) - expected)).toBeLessThan(TINY);
        expect(handOf(placed)).toBeGreaterThan(0);
      }),
    );
  });

  it('does not care which of the two points comes first', () => {
    fc.assert(
      fc.property(calibration, pixel, ([first, second], asked) => {
        const [p, q] = [similarityFrom([first, second]), similarityFrom([second, first])].map((placed) =>
          toPlace(placed, asked),
        );
        expect(Math.hypot(p!.x - q!.x, p!.y - q!.y)).toBeLessThan(TINY);
      }),
    );
  });
});

/** Right then up on the picture, as a cross product in plan: positive while left stays left. */
function handOf(placed: Similarity): number {
  const origin = toPlace(placed, { x: 0, y: 0 });
  const right = toPlace(placed, { x: 1, y: 0 });
  const up = toPlace(placed, { x: 0, y: -1 });
  return (right.x - origin.x) * (up.y - origin.y) - (right.y - origin.y) * (up.x - origin.x);
}
