import type { Decision } from '../../domain/quality/decision.ts';
import type { Outcome } from '../../domain/quality/record.ts';
import type { QualityRefusal } from '../../domain/quality/refusal.ts';
import type { Remark } from '../../domain/quality/remark.ts';
import type { Tx } from '../../store/database.ts';

/** What becomes of a record that was asked for: refused, or what to write beside it. */
export type Ruling =
  | { readonly ok: false; readonly refusal: QualityRefusal }
  | {
      readonly ok: true;
      readonly outcome: Outcome | null;
      readonly remarks: readonly Remark[];
      /** Of the subject once the record stands; a run has none, its status is reckoned. */
      readonly state: string | null;
      /** Writes the states that follow, and counts the subject's version up. */
      readonly save: (tx: Tx) => Promise<void>;
    };

export function ruled<Card>(
  decision: Decision<Card>,
  told: (card: Card) => {
    readonly state: string | null;
    readonly save: (tx: Tx) => Promise<void>;
    readonly outcome?: Outcome;
  },
): Ruling {
  if (!decision.ok) return decision;
  const { remarks, outcome } = decision;
  return { ok: true, remarks, outcome, ...told(decision.state) };
}
