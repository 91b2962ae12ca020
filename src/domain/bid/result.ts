/** The lines of a bid from the cost upwards; everything before `overhead` is cost. */
export const BID_LINES = [
  'materials',
  'tax',
  'labour',
  'extras',
  'other',
  'supervision',
  'contingency',
  'overhead',
  'profit',
] as const;
export type BidLineName = (typeof BID_LINES)[number];

/** How a line came about, in figures a page can put into words; amounts in minor units. */
export type BidWorking =
  | { readonly kind: 'entered' }
  | { readonly kind: 'priced' }
  | { readonly kind: 'percent'; readonly percent: number; readonly of: number }
  | { readonly kind: 'hours'; readonly hours: number; readonly costPerHour: number }
  | {
      readonly kind: 'range';
      readonly from: number;
      readonly to: number;
      readonly p: number;
      readonly costPerHour: number;
    }
  | { readonly kind: 'profit'; readonly markupPercent: number; readonly marginPercent: number; readonly of: number };

export interface BidLine {
  readonly line: BidLineName;
  /** Minor units, rounded once; the lines sum to the price. */
  readonly amount: number;
  readonly working: BidWorking;
}

/** One thing of the takeoff at its price; `price` and `amount` are null where nobody has given one. */
export interface PricedLine {
  readonly type: string;
  readonly item: string;
  readonly detail: string | null;
  readonly quantity: number;
  readonly price: number | null;
  readonly amount: number | null;
}

export interface BidResult {
  readonly lines: readonly BidLine[];
  /** Sum of the lines before overhead, minor units. */
  readonly cost: number;
  readonly price: number;
  /** What the price lacks, a sentence each with its remedy; empty when nothing is known to be missing. */
  readonly incomplete: readonly string[];
  readonly materials: readonly PricedLine[];
}
