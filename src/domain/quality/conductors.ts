/** Phases, then neutral, then ground: the order of a test sheet. */
export type Conductor = 'L1' | 'L2' | 'L3' | 'L4' | 'N' | 'G';
export const CONDUCTORS = ['L1', 'L2', 'L3', 'L4', 'N', 'G'] as const;

/** What of a busway type says which conductors it holds; `poles` counts phases. */
export interface ConductorSet {
  readonly poles: number;
  readonly neutral: 'none' | 'full' | 'double';
}

const PHASES = ['L1', 'L2', 'L3', 'L4'] as const;

/** The poles that a joint's contact set must seat, L1 first. A double neutral is one pole of twice the size. */
export function polesOf({ poles, neutral }: ConductorSet): readonly Conductor[] {
  const phases = PHASES.slice(0, poles);
  return neutral === 'none' ? phases : [...phases, 'N'];
}

/** The conductors that an insulation test sets against each other: the poles and the ground path. */
export function conductorsOf(set: ConductorSet): readonly Conductor[] {
  return [...polesOf(set), 'G'];
}
