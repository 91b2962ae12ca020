/** A straight mapping of one range on another: `linear([0, 10], [0, 100])(5) = 50`. */
export function linear(from: readonly [number, number], to: readonly [number, number]): (value: number) => number {
  const slope = (to[1] - to[0]) / (from[1] - from[0]);
  return (value) => to[0] + (value - from[0]) * slope;
}

/** Drawing coordinates to a tenth: short files, and the same bytes on every machine. */
export function tenth(value: number): number {
  const rounded = Math.round(value * 10) / 10;
  return rounded === 0 ? 0 : rounded;
}

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}
