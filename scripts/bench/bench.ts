import type { PlacesToKeep } from '../proof/databases.ts';

type Work = () => unknown;

/** One comparison: what is measured, and the named baseline beside it in the same run. */
export interface Bench {
  readonly name: string;
  readonly measured: string;
  readonly baseline: string;
  /** How to read the ratio: what it would be if the program did badly, or well. */
  readonly reading: string;
  /** How long what is measured may take, where the program promises it: its median is then printed beside the ratio. */
  readonly limitMs?: number;
  readonly prepare: (places: PlacesToKeep) => Promise<Prepared | Timed> | Prepared | Timed;
}

/** A comparison that takes its own times, because each round is of many instances and wants their medians. */
export interface Timed {
  readonly round: () => Promise<{ readonly measured: number; readonly baseline: number }>;
  readonly close?: Work;
}

export interface Prepared {
  readonly measured: Work;
  readonly baseline: Work;
  /** Done before each measurement of either kind and not counted. */
  readonly between?: Work;
  readonly close?: Work;
}
