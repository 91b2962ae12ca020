import type { Finding } from '../../finding.ts';
import type { Labour } from '../../labour/result.ts';
import type { Bid } from '../../model.ts';
import type { SpareLine } from '../../ordering/spares.ts';
import type { TakeoffLine } from '../../takeoff/result.ts';
import type { LevelledPackage } from '../level-quotes.ts';
import type { BidLine, UnitPrices } from '../result.ts';

/** A bid with all that its checks look at. */
export interface Judged {
  readonly bid: Bid;
  readonly lines: readonly BidLine[];
  readonly labour: Labour | null;
  /** By the job's rules for ordering; null without any. */
  readonly spares: readonly SpareLine[] | null;
  readonly takeoff: readonly TakeoffLine[];
  readonly packages: readonly LevelledPackage[];
  readonly unitPrices: UnitPrices | null;
}

/** A check of a bid: of the whole job, and of nothing that stands at a place. */
export function bidFinding(
  rule: string,
  severity: Finding['severity'],
  message: string,
  source = 'entries of the bid',
): Finding {
  return { rule, severity, run: null, at: null, message, source };
}
