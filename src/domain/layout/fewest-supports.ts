import type { SupportGrid } from './support-grid.ts';

/** Where the search comes to a halt: after the last place that it reached there is none within reach. */
export interface Blocked {
  /** The farthest place that supports reach; null when not even the first can be placed. */
  readonly after: number | null;
}

export type SupportChoice =
  | { readonly ok: true; readonly places: readonly number[] }
  | { readonly ok: false; readonly blocked: Blocked };

/**
 * The places that win: fewest supports, then the least sum of squared gaps, then the lexicographically smallest list. Exact.
 *
 * `reach` never falls, so the number of supports still needed never rises along the stretch and the places fall into layers.
 * Within a layer the squared gap is a Monge cost on a staircase, so the best follower never moves back, and each layer is
 * solved by dividing and conquering.
 */
export function fewestSupports(grid: SupportGrid): SupportChoice {
  const needed = supportsNeeded(grid);
  const start = bestStart(grid, needed);
  if (start === null) return { ok: false, blocked: farthest(grid) };
  const layers = layersFrom(grid, needed, start.from, start.to);
  const squares = new Float64Array(grid.allowed.length);
  const follower = new Int32Array(grid.allowed.length).fill(-1);
  for (let layer = layers.length - 2; layer >= 0; layer--) {
    solveLayer(grid, layers[layer]!, layers[layer + 1]!, squares, follower);
  }
  return { ok: true, places: walk(layers[0]!, squares, follower) };
}

/** Supports needed from each place to the end of the stretch, itself included; 0 where none may stand or none suffices. */
function supportsNeeded({ allowed, reach, earliestLast }: SupportGrid): Int32Array {
  const needed = new Int32Array(allowed.length);
  const lastAllowed = lastAllowedUpTo(allowed);
  for (let place = allowed.length - 1; place >= 0; place--) {
    if (allowed[place] === 0) continue;
    if (place >= earliestLast) {
      needed[place] = 1;
      continue;
    }
    const next = lastAllowed[reach[place]!] ?? -1;
    if (next > place && needed[next]! > 0) needed[place] = needed[next]! + 1;
  }
  return needed;
}

function lastAllowedUpTo(allowed: Uint8Array): Int32Array {
  const last = new Int32Array(allowed.length);
  let held = -1;
  for (let place = 0; place < allowed.length; place++) {
    if (allowed[place] === 1) held = place;
    last[place] = held;
  }
  return last;
}

/** The first places from which as few supports as possible suffice: a range, since the need never rises. */
function bestStart(grid: SupportGrid, needed: Int32Array): { from: number; to: number } | null {
  let to = Math.min(grid.latestFirst, needed.length - 1);
  while (to >= 0 && needed[to] === 0) to--;
  if (to < 0) return null;
  let from = to;
  for (let place = to; place >= 0; place--) {
    if (needed[place] === needed[to]) from = place;
    else if (needed[place]! > needed[to]!) break;
  }
  return { from, to };
}

/** The allowed places of each layer that the layers before it can reach, in ascending order. */
function layersFrom(grid: SupportGrid, needed: Int32Array, from: number, to: number): number[][] {
  const layers: number[][] = [placesNeeding(needed, from, to, needed[to]!)];
  for (let rest = needed[to]! - 1; rest >= 1; rest--) {
    const before = layers.at(-1)!;
    layers.push(placesNeeding(needed, before[0]! + 1, grid.reach[before.at(-1)!]!, rest));
  }
  return layers;
}

function placesNeeding(needed: Int32Array, from: number, to: number, rest: number): number[] {
  const places: number[] = [];
  for (let place = from; place <= to; place++) if (needed[place] === rest) places.push(place);
  return places;
}

/** Best sum of squared gaps from every place of a layer over every follower within reach; of equal ones the nearest follower. */
function solveLayer(
  grid: SupportGrid,
  layer: readonly number[],
  next: readonly number[],
  squares: Float64Array,
  follower: Int32Array,
): void {
  const solve = (from: number, to: number, low: number, high: number): void => {
    if (from > to) return;
    const middle = (from + to) >> 1;
    const place = layer[middle]!;
    let best = Number.POSITIVE_INFINITY;
    let at = low;
    for (let index = low; index <= high && next[index]! <= grid.reach[place]!; index++) {
      const gap = next[index]! - place;
      const total = gap * gap + squares[next[index]!]!;
      if (total < best) {
        best = total;
        at = index;
      }
    }
    squares[place] = best;
    follower[place] = next[at]!;
    solve(from, middle - 1, low, at);
    solve(middle + 1, to, at, high);
  };
  solve(0, layer.length - 1, 0, next.length - 1);
}

function walk(starts: readonly number[], squares: Float64Array, follower: Int32Array): number[] {
  let place = starts.reduce((best, start) => (squares[start]! < squares[best]! ? start : best));
  const places = [place];
  while (follower[place]! >= 0) {
    place = follower[place]!;
    places.push(place);
  }
  return places;
}

function farthest({ allowed, reach, latestFirst }: SupportGrid): Blocked {
  const last = lastAllowedUpTo(allowed);
  let place = last[latestFirst] ?? -1;
  if (place < 0) return { after: null };
  for (let next = last[reach[place]!]!; next > place; next = last[reach[place]!]!) place = next;
  return { after: place };
}
