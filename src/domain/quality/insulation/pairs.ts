import { type Conductor, type ConductorSet, conductorsOf } from '../conductors.ts';

/** Two conductors that are tested against each other: "L1-L2", "L3-N", "N-G". */
export type Pair = string;

/**
 * The pairs that an insulation test must measure, phase to phase first: every conductor against every other, the ground path
 * among them. Three phases, neutral and ground make ten (EC&M, busway troubleshooting; 3 + 3 + 3 + 1), without a neutral six.
 * A busway of this model has no isolated ground, so fifteen are never asked for.
 */
export function pairsOf(set: ConductorSet): readonly Pair[] {
  const conductors = conductorsOf(set);
  const pairs = conductors.flatMap((a, index) => conductors.slice(index + 1).map((b) => [a, b] as const));
  return [...pairs].sort(([a, b], [c, d]) => rank(a, b) - rank(c, d)).map(([a, b]) => `${a}-${b}`);
}

/** The pair under its own name, whichever conductor was written first: "L3-L1" and "L1-L3" are one. Null when it is none. */
export function pairNamed(written: string, pairs: readonly Pair[]): Pair | null {
  const [a, b] = written.split('-');
  return pairs.find((pair) => pair === written || pair === `${b}-${a}`) ?? null;
}

function rank(a: Conductor, b: Conductor): number {
  if (a === 'N') return 3;
  if (b === 'G') return 2;
  return b === 'N' ? 1 : 0;
}
