import type { PlacesToKeep } from './databases.ts';

/** One heavy proof. `run` never throws for a wrong answer of the program: it lists it. */
export interface Proof {
  readonly name: string;
  /** What is compared with what, in one line. */
  readonly says: string;
  readonly fullCount: number;
  /** What the tests run on every change. */
  readonly shortCount: number;
  readonly run: (trial: Trial) => Promise<Outcome> | Outcome;
}

export interface Trial {
  readonly count: number;
  readonly seed: number;
  /** Where the proofs that write get their databases. */
  readonly databases: PlacesToKeep;
}

export interface Outcome {
  /** How many instances were really compared. */
  readonly compared: number;
  /** One sentence for each instance that came out otherwise than the reference. */
  readonly failures: readonly string[];
  /** What the instances were like, so that a reader can see that they were worth comparing. */
  readonly note: string;
}
