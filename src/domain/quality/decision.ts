import type { QualityRefusal } from './refusal.ts';
import type { Remark } from './remark.ts';

/**
 * What becomes of a record: the new state it leads to, or why it is refused. `information-only` is kept in the book as it
 * was made and credits nothing.
 */
export type Decision<State> =
  | {
      readonly ok: true;
      readonly state: State;
      readonly outcome: 'credited' | 'information-only';
      readonly remarks: readonly Remark[];
    }
  | { readonly ok: false; readonly refusal: QualityRefusal };

export function credited<State>(state: State, remarks: readonly Remark[] = []): Decision<State> {
  return { ok: true, state, outcome: 'credited', remarks };
}

export function informationOnly<State>(state: State, remarks: readonly Remark[]): Decision<State> {
  return { ok: true, state, outcome: 'information-only', remarks };
}

export function refused<State>(refusal: QualityRefusal): Decision<State> {
  return { ok: false, refusal };
}
