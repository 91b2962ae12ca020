/** A second opinion on supports: every subset of the places, written out and sorted. Shares nothing with the program. */
export interface Hanging {
  readonly length: number;
  readonly step: number;
  readonly offset: number;
  readonly maxSpacing: number;
  readonly maxOverhang: number;
  readonly jointClear: number;
  readonly fittingWithin: number | null;
  readonly crossingClear: number;
  readonly capacity: number | null;
  readonly pieces: readonly {
    readonly from: number;
    readonly to: number;
    readonly fitting: boolean;
    readonly kg: number;
  }[];
  readonly joints: readonly number[];
  readonly zones: readonly (readonly [number, number])[];
  readonly walls: readonly { readonly at: number; readonly thickness: number }[];
  readonly points: readonly { readonly at: number; readonly kg: number }[];
}

/** With `standing`, the best of those that have every hanger that stands and is still legal. */
export function bestSupports(hanging: Hanging, standing: readonly number[] = []): readonly number[] | null {
  const places = placesOf(hanging).filter((place) => isAllowed(hanging, place));
  const staying = standing.filter((place) => places.includes(place));
  const sound: number[][] = [];
  for (let mask = 1; mask < 1 << places.length; mask++) {
    const chosen = places.filter((_, bit) => (mask & (1 << bit)) !== 0);
    if (staying.every((place) => chosen.includes(place)) && isSound(hanging, chosen)) sound.push(chosen);
  }
  return sound.sort(compare)[0] ?? null;
}

function placesOf({ length, step, offset }: Hanging): number[] {
  const places: number[] = [];
  for (let place = 0; place <= length; place++) if ((place - offset) % step === 0) places.push(place);
  return places;
}

function isAllowed(hanging: Hanging, at: number): boolean {
  const nearJoint = hanging.joints.some((joint) => Math.abs(joint - at) < hanging.jointClear);
  const inZone = hanging.zones.some(([from, to]) => from < at && at < to);
  const inWall = hanging.walls.some((wall) => Math.abs(wall.at - at) < wall.thickness / 2 + hanging.crossingClear);
  return !nearJoint && !inZone && !inWall;
}

function isSound(hanging: Hanging, chosen: readonly number[]): boolean {
  const { length, maxSpacing, maxOverhang, fittingWithin, capacity } = hanging;
  if (chosen[0]! > maxOverhang || chosen.at(-1)! < length - maxOverhang) return false;
  if (chosen.some((at, i) => i > 0 && at - chosen[i - 1]! > maxSpacing)) return false;
  if (fittingWithin !== null && !everyArmHeld(hanging, chosen, fittingWithin)) return false;
  return capacity === null || loadsOf(hanging, chosen).every((load) => load <= capacity + 1e-9);
}

function everyArmHeld({ pieces }: Hanging, chosen: readonly number[], within: number): boolean {
  return pieces.every((piece, index) => {
    if (!piece.fitting) return true;
    const straight = (neighbour: Hanging['pieces'][number] | undefined) =>
      neighbour !== undefined && !neighbour.fitting;
    const before = !straight(pieces[index - 1]) || chosen.some((at) => at <= piece.from && at >= piece.from - within);
    const after = !straight(pieces[index + 1]) || chosen.some((at) => at >= piece.to && at <= piece.to + within);
    return before && after;
  });
}

/** The lever rule, load by load: each straight bit between cuts counts at its middle, which is exact for a uniform load. */
export function loadsOf(hanging: Hanging, chosen: readonly number[]): number[] {
  const loads = chosen.map(() => 0);
  const put = (at: number, kg: number) => {
    const next = chosen.findIndex((support) => support >= at);
    if (next === 0) loads[0]! += kg;
    else if (next < 0) loads[loads.length - 1]! += kg;
    else {
      const [left, right] = [chosen[next - 1]!, chosen[next]!];
      loads[next]! += (kg * (at - left)) / (right - left);
      loads[next - 1]! += (kg * (right - at)) / (right - left);
    }
  };
  for (const point of hanging.points) put(point.at, point.kg);
  for (const piece of hanging.pieces) {
    const cuts = [piece.from, ...chosen.filter((at) => at > piece.from && at < piece.to), piece.to];
    cuts.slice(1).forEach((to, i) => {
      const from = cuts[i]!;
      put((from + to) / 2, (piece.kg * (to - from)) / (piece.to - piece.from));
    });
  }
  return loads;
}

function compare(a: readonly number[], b: readonly number[]): number {
  const squares = (list: readonly number[]) => list.slice(1).reduce((sum, at, i) => sum + (at - list[i]!) ** 2, 0);
  const difference = a.length - b.length || squares(a) - squares(b);
  if (difference !== 0) return difference;
  const first = a.findIndex((at, i) => at !== b[i]);
  return first < 0 ? 0 : a[first]! - b[first]!;
}
