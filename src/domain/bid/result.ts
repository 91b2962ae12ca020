import type { Finding } from '../finding.ts';
import type { AlternateEntry, BidEntries, SubcontractEntry, TimedEntry, UnitItem } from './bid-entries.ts';
import type { LevelledPackage } from './level-quotes.ts';

/** The lines of a bid from the cost upwards, in this order; everything before `overhead` is cost. */
export const BID_LINES = [
  'materials',
  'waste',
  'spares',
  'escalation',
  'freight',
  'tax',
  'labour',
  'consumables',
  'extras',
  'equipment',
  'subcontracts',
  'other',
  'supervision',
  'permit',
  'contingency',
  'overhead',
  'bond',
  'profit',
] as const;
export type BidLineName = (typeof BID_LINES)[number];

/** A part of a line, in the words of who entered it; minor units, rounded once. */
export interface BidPart {
  readonly name: string;
  readonly amount: number;
  /** The quote that it is of, or its place among what is paid by time. */
  readonly quote?: string;
  readonly timed?: number;
}

/** How a line came about, in figures a page can put into words; amounts in minor units. */
export type BidWorking =
  | { readonly kind: 'entered' }
  | { readonly kind: 'priced' }
  /** `takeoff`: at the prices of the types, what no chosen quote holds. */
  | { readonly kind: 'quoted'; readonly takeoff: number; readonly parts: readonly BidPart[] }
  | { readonly kind: 'parts'; readonly parts: readonly BidPart[] }
  /** `on`: the lines it is reckoned on, absent for the first or all lines above; `less`: what of them is left out. */
  | {
      readonly kind: 'percent';
      readonly percent: number;
      readonly of: number;
      readonly on?: readonly BidLineName[];
      readonly less?: number;
    }
  | { readonly kind: 'hours'; readonly hours: number; readonly costPerHour: number }
  | {
      readonly kind: 'range';
      readonly from: number;
      readonly to: number;
      readonly p: number;
      readonly costPerHour: number;
    }
  /**
   * `of` is the price, or the cost with overhead; `factor` makes it of the lines above. Of a scale, `percent` is the rate of
   * the step that it ends in, `fixed` what the steps before add: the price is of the lines above and `fixed`.
   */
  | {
      readonly kind: 'bond';
      readonly percent: number;
      readonly of: number;
      readonly base: 'price' | 'cost';
      readonly factor: number;
      readonly scale?: {
        readonly fixed: number;
        readonly steps: readonly { readonly of: number; readonly percent: number }[];
      };
    }
  | { readonly kind: 'profit'; readonly markupPercent: number; readonly marginPercent: number; readonly of: number };

export interface BidLine {
  readonly line: BidLineName;
  /** Which of several lines of a name: what a tax is called. null: the only one. */
  readonly label: string | null;
  /** Minor units, rounded once; the lines sum to the price. */
  readonly amount: number;
  readonly working: BidWorking;
}

/** So many of one thing at its price, minor units; `price` and `amount` are null where nobody has given one. */
export interface PricedThing {
  readonly type: string;
  readonly item: string;
  readonly detail: string | null;
  readonly quantity: number;
  readonly price: number | null;
  readonly amount: number | null;
}

/** One thing of the takeoff at its price. */
export interface PricedLine extends PricedThing {
  readonly key: UnitItem;
}

/** A thing of the takeoff that a chosen quote holds, at the price that it would have: it is not in the price again. */
export interface HeldLine extends PricedLine {
  readonly quote: string;
  /** Or it is only part of the lot. */
  readonly isNamed: boolean;
}

export interface TimedLine extends TimedEntry {
  /** number x time x rate + once; null without a rate. */
  readonly amount: number | null;
}

/** An alternate with the bid's own percentages on its direct cost. */
export interface AlternatePrice {
  readonly entry: AlternateEntry;
  readonly lines: readonly BidLine[];
  /** What it adds to the price; below nought when it deducts. null where a figure is missing. */
  readonly amount: number | null;
}

export interface UnitPrice {
  readonly item: UnitItem;
  readonly unit: 'each' | 'ft' | 'm';
  readonly quantity: number;
  /** Material and likely hours of one; material null where nobody has priced it alone. */
  readonly material: number | null;
  readonly hours: number;
  /** Direct cost of one with waste, escalation and tax, unrounded; null without its material. */
  readonly cost: number | null;
  /** The price of one, rounded once; null without its cost. */
  readonly worked: number | null;
  readonly offered: number | null;
  /** The offered price, or else the worked one, times the quantity. */
  readonly extended: number | null;
}

export interface UnitPrices {
  readonly lines: readonly UnitPrice[];
  /** What overhead, bond and profit make of a cost of one. */
  readonly factor: number;
  /** What of the price no unit price holds: the extended ones and this are the price. */
  readonly remainder: number;
}

/** What goes with the price and changes nothing of it. */
export type BidTerms = Pick<
  BidEntries,
  | 'date'
  | 'validUntil'
  | 'estimateClass'
  | 'ownerFurnished'
  | 'inclusions'
  | 'exclusions'
  | 'qualifications'
  | 'addenda'
>;

export interface BidResult {
  readonly lines: readonly BidLine[];
  /** Sum of the lines before overhead, minor units. */
  readonly cost: number;
  readonly price: number;
  /** What the price lacks, a sentence each with its remedy; empty when nothing is known to be missing. */
  readonly incomplete: readonly string[];
  readonly materials: readonly PricedLine[];
  readonly held: readonly HeldLine[];
  /** Spares by the rules for ordering, where no sum stands for them. */
  readonly spares: readonly PricedThing[];
  readonly packages: readonly LevelledPackage[];
  readonly timed: readonly TimedLine[];
  readonly subcontracts: readonly SubcontractEntry[];
  readonly alternates: readonly AlternatePrice[];
  /** null where none was asked for. */
  readonly unitPrices: UnitPrices | null;
  /** What is worth a second look. Money: for the office, like all of this. */
  readonly checks: readonly Finding[];
  readonly terms: BidTerms;
}
