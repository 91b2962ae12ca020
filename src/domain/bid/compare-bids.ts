/** Anything of two bids that can be laid side by side under one name. */
export interface Figure {
  readonly name: string;
  /** null: not in this bid. */
  readonly value: number | null;
}

export interface FigureDifference {
  readonly name: string;
  readonly before: number | null;
  readonly after: number | null;
  /** What was added; what is in one alone counts whole. */
  readonly change: number;
}

/** Two lists side by side by name, in the order of the first and then of what the second adds; equal ones too. */
export function besideEachOther(before: readonly Figure[], after: readonly Figure[]): readonly FigureDifference[] {
  const of = (figures: readonly Figure[]) => new Map(figures.map(({ name, value }) => [name, value]));
  const old = of(before);
  const now = of(after);
  return [...new Set([...old.keys(), ...now.keys()])].map((name) => {
    const a = old.get(name) ?? null;
    const b = now.get(name) ?? null;
    return { name, before: a, after: b, change: (b ?? 0) - (a ?? 0) };
  });
}
