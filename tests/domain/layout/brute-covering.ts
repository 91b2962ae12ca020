/** A second opinion on coverings: every sequence of pieces, written out and sorted. Shares nothing with the program. */
export interface Instance {
  readonly from: number;
  readonly reach: number;
  readonly hardStop: number;
  readonly nominal: number;
  readonly feedFirst: boolean;
  readonly stock: readonly number[];
  readonly cut: { readonly min: number; readonly max: number; readonly step: number } | null;
  readonly listed: ReadonlyMap<number, number>;
  readonly perUnit: number;
  readonly surcharge: number;
  readonly joint: number;
  readonly bars: readonly (readonly [number, number])[];
}

export interface Candidate {
  readonly pieces: readonly { readonly length: number; readonly cut: boolean }[];
  readonly to: number;
  readonly cost: number;
}

export function bestByEnumeration(instance: Instance): Candidate | null {
  const all: Candidate[] = [];
  enumerate(instance, [], instance.from, all);
  return all.sort((a, b) => compare(instance, a, b))[0] ?? null;
}

/** The best few that differ in their stock pieces, in the order of these or in the place of the cut among them. */
export function bestFewByEnumeration(instance: Instance, count: number): readonly Candidate[] {
  const all: Candidate[] = [];
  enumerate(instance, [], instance.from, all);
  const seen = new Set<string>();
  const isNew = ({ pieces }: Candidate) => {
    const choice = pieces.map(({ length, cut }) => (cut ? 'cut' : length)).join();
    return !seen.has(choice) && seen.add(choice) !== undefined;
  };
  const isStock = ({ pieces }: Candidate) => pieces.some(({ length, cut }) => cut && instance.stock.includes(length));
  return all
    .filter((candidate) => !isStock(candidate))
    .sort((a, b) => compare(instance, a, b))
    .filter(isNew)
    .slice(0, count);
}

/** A piece of a covering in its place. */
export interface Standing {
  readonly from: number;
  readonly to: number;
  readonly cut: boolean;
}

/** Every covering as the places of its pieces. */
export function allStandings(instance: Instance): readonly (readonly Standing[])[] {
  const all: Candidate[] = [];
  enumerate(instance, [], instance.from, all);
  return all.map((candidate) => standingOf(instance, candidate));
}

/** The best of those coverings that have these very pieces in these very places. */
export function bestThrough(instance: Instance, held: readonly Standing[]): Candidate | null {
  const all: Candidate[] = [];
  enumerate(instance, [], instance.from, all);
  const has = (standing: readonly Standing[], one: Standing) =>
    standing.some(({ from, to, cut }) => from === one.from && to === one.to && cut === one.cut);
  return (
    all
      .filter((candidate) => held.every((one) => has(standingOf(instance, candidate), one)))
      .sort((a, b) => compare(instance, a, b))[0] ?? null
  );
}

function standingOf({ from }: Instance, { pieces }: Candidate): Standing[] {
  let at = from;
  return pieces.map(({ length, cut }) => {
    at += length;
    return { from: at - length, to: at, cut };
  });
}

function enumerate(instance: Instance, pieces: Candidate['pieces'], at: number, all: Candidate[]): void {
  if (at > instance.hardStop) return;
  if (at >= instance.reach) all.push({ pieces, to: at, cost: costOf(instance, pieces) });
  const isJoint = pieces.length > 0;
  if (isJoint && instance.bars.some(([from, to]) => from < at && at < to)) return;
  for (const length of instance.stock) enumerate(instance, [...pieces, { length, cut: false }], at + length, all);
  if (instance.cut === null || pieces.some((piece) => piece.cut)) return;
  for (let length = instance.cut.min; length <= instance.cut.max; length += instance.cut.step) {
    enumerate(instance, [...pieces, { length, cut: true }], at + length, all);
  }
}

function costOf({ listed, perUnit, surcharge, joint }: Instance, pieces: Candidate['pieces']): number {
  return pieces.reduce((sum, { length, cut }) => {
    const price = listed.get(length) ?? Math.round((perUnit * length) / 80_000);
    return sum + price + joint + (cut ? surcharge : 0);
  }, 0);
}

function compare(instance: Instance, a: Candidate, b: Candidate): number {
  const away = ({ to }: Candidate) => Math.abs(to - instance.nominal);
  const cuts = ({ pieces }: Candidate) => pieces.filter((piece) => piece.cut).length;
  return (
    a.cost - b.cost ||
    away(a) - away(b) ||
    a.pieces.length - b.pieces.length ||
    cuts(a) - cuts(b) ||
    longer(instance, a, b)
  );
}

function longer({ feedFirst }: Instance, a: Candidate, b: Candidate): number {
  const order = ({ pieces }: Candidate) => (feedFirst ? pieces : [...pieces].reverse()).map((piece) => piece.length);
  const [left, right] = [order(a), order(b)];
  for (let i = 0; i < Math.min(left.length, right.length); i++) {
    if (left[i] !== right[i]) return right[i]! - left[i]!;
  }
  return 0;
}
