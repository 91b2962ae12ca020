import type { Length } from '../units/length.ts';

/** A place on a picture in its pixels, from the top left corner: x to the right, y down. */
export interface Pixel {
  readonly x: number;
  readonly y: number;
}

/** A place in plan: x to the east, y to the north. */
export interface Place {
  readonly x: Length;
  readonly y: Length;
}

export interface CalibrationPoint {
  readonly pixel: Pixel;
  readonly place: Place;
}
export type Calibration = readonly [CalibrationPoint, CalibrationPoint];

/**
 * How a picture lies in plan: turned, at one scale, moved; never sheared and never mirrored. `a` and `b` are lengths per pixel:
 * a pixel to the right goes `a` east and `b` north, a pixel down goes `b` east and `a` south. The top left corner lies at `x`, `y`.
 */
export interface Similarity {
  readonly a: number;
  readonly b: number;
  readonly x: number;
  readonly y: number;
}

/**
 * The similarity that two points fix: with q = x − iy of a pixel and p = x + iy of its place, a + ib = (p₂ − p₁) / (q₂ − q₁)
 * (the plane similarity as a complex linear map). Lengths in, lengths per pixel out. The two pixels must differ.
 * `similarityFrom([{ pixel: { x: 0, y: 0 }, place: { x: 0, y: 0 } }, { pixel: { x: 5, y: 0 }, place: { x: 300, y: 400 } }])`
 * has `a = 60` and `b = 80`: 100 a pixel, turned anticlockwise by the larger angle of the 3-4-5 triangle.
 */
export function similarityFrom([first, second]: Calibration): Similarity {
  const [u, v] = [second.pixel.x - first.pixel.x, first.pixel.y - second.pixel.y];
  const [dx, dy] = [second.place.x - first.place.x, second.place.y - first.place.y];
  const square = u * u + v * v;
  const a = (dx * u + dy * v) / square;
  const b = (dy * u - dx * v) / square;
  return {
    a,
    b,
    x: first.place.x - a * first.pixel.x - b * first.pixel.y,
    y: first.place.y - b * first.pixel.x + a * first.pixel.y,
  };
}

/** Where a pixel lies in plan; not rounded. */
export function toPlace({ a, b, x, y }: Similarity, pixel: Pixel): Place {
  return { x: x + a * pixel.x + b * pixel.y, y: y + b * pixel.x - a * pixel.y };
}

/** The pixel that shows a place in plan; it may lie outside the picture. */
export function toPixel({ a, b, x, y }: Similarity, place: Place): Pixel {
  const [dx, dy] = [place.x - x, place.y - y];
  const square = a * a + b * b;
  return { x: (a * dx + b * dy) / square, y: (b * dx - a * dy) / square };
}

/** The length that one pixel shows. */
export function lengthPerPixel({ a, b }: Similarity): number {
  return Math.hypot(a, b);
}

/** By how many degrees the picture is turned anticlockwise to lie in plan, from -180 to 180. */
export function turnedDegrees({ a, b }: Similarity): number {
  return (Math.atan2(b, a) * 180) / Math.PI;
}

/** The part of the plan that the whole picture covers, as the corners of the smallest upright window round it. */
export function coveredBy(
  similarity: Similarity,
  { width, height }: { readonly width: number; readonly height: number },
): { readonly left: number; readonly right: number; readonly low: number; readonly high: number } {
  const corners = [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: 0, y: height },
    { x: width, y: height },
  ].map((corner) => toPlace(similarity, corner));
  const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), low: Math.min(...ys), high: Math.max(...ys) };
}
