/** The lines of a bid that a tax may be due on. Overhead, profit and tax itself are none of them. */
export const TAXABLE = [
  'materials',
  'freight',
  'consumables',
  'labour',
  'extras',
  'equipment',
  'subcontracts',
  'other',
  'supervision',
  'permit',
] as const;
export type Taxable = (typeof TAXABLE)[number];

/** What a line of a quote speaks of: the takeoff's own items, and what a takeoff does not count. */
export const QUOTED_ITEMS = [
  'lot',
  'section',
  'elbow',
  'tee',
  'joint-kit',
  'clamp',
  'contact-set',
  'bolt',
  'end-feed',
  'end-cap',
  'slot-closure',
  'support',
  'rod',
  'anchor',
  'tap',
  'drop',
  'fire-seal',
  'label',
  'tool',
  'field-service',
  'drawings',
  'tests',
  'other',
] as const;
export type QuotedItem = (typeof QUOTED_ITEMS)[number];

/** One line of a quote: at its own amount, without one because another line holds it, or not offered. */
export interface QuoteLine {
  readonly item: QuotedItem;
  /** What it is more exactly; null where the item says it. */
  readonly detail: string | null;
  readonly state: 'priced' | 'included' | 'lacks';
  /** Minor units. Of a line that lacks: the plug that stands in for it; null when nobody has put one. */
  readonly amount: number | null;
}

export interface Quote {
  readonly id: string;
  /** Quotes of one package are rivals: at most one of them is chosen. */
  readonly package: string;
  /** The line of the bid that the chosen quote goes to. */
  readonly goesTo: 'materials' | 'subcontracts';
  readonly supplier: string;
  /** Dates as `2026-05-12`. */
  readonly date: string | null;
  readonly validUntil: string | null;
  readonly freight: 'in' | 'out' | null;
  /** What the freight costs where it is not in. */
  readonly freightAmount: number | null;
  readonly tax: 'in' | 'out' | null;
  /** The tax in the quoted amounts, where it is in. */
  readonly taxAmount: number | null;
  /** Held until delivery: escalation leaves it alone. */
  readonly firm: boolean;
  readonly chosen: boolean;
  readonly note: string | null;
  readonly lines: readonly QuoteLine[];
}

/** Paid by time: lifts, tools, and people on site who are not in the hours. */
export interface TimedEntry {
  readonly item: string;
  readonly goesTo: 'equipment' | 'supervision';
  readonly number: number;
  readonly time: number;
  readonly per: 'day' | 'week' | 'month';
  /** Minor units for one of them and one `per`; null: nobody has given one. */
  readonly rate: number | null;
  /** Paid once for all of them, as delivery and collection. */
  readonly once: number | null;
}

export interface SubcontractEntry {
  readonly item: string;
  readonly work: 'fire-sealing' | 'testing' | 'other';
  readonly amount: number | null;
}

export interface TaxEntry {
  readonly name: string;
  readonly percent: number;
  readonly on: readonly Taxable[];
}

/** What is offered beside the bid; its own figures are direct cost, and the bid's percentages go on them. */
export interface AlternateEntry {
  readonly name: string;
  readonly kind: 'add' | 'deduct';
  readonly materials: number | null;
  readonly hours: number | null;
  readonly subcontracts: number | null;
  readonly other: number | null;
  readonly note: string | null;
}

/** Things of the takeoff that can have a price of one. */
export const UNIT_ITEMS = [
  'section',
  'elbow',
  'tee',
  'joint-kit',
  'end-feed',
  'end-cap',
  'support',
  'tap',
  'drop',
  'fire-seal',
  'label',
  'slot-closure',
] as const;
export type UnitItem = (typeof UNIT_ITEMS)[number];

export interface UnitPriceEntry {
  readonly item: UnitItem;
  /** Material of one, where the job has no price of its own for it. */
  readonly material: number | null;
  /** The price that the bid form is to show, where it is not the one that was worked. */
  readonly offered: number | null;
}

export interface Addendum {
  readonly number: string;
  readonly date: string | null;
  readonly note: string | null;
}

/** A premium on what it secures, which is the price, or on cost with overhead. */
export interface BondEntry {
  /** Of all of it, or of what lies above the steps. */
  readonly percent: number;
  readonly of: 'price' | 'cost';
  /** The first so much at a rate of its own, the next so much at another; minor units. Absent: one rate. */
  readonly scale?: readonly { readonly amount: number; readonly percent: number }[] | undefined;
}

export type EstimateClass = 1 | 2 | 3 | 4 | 5;

/** What goes beyond a sum for material, other cost and supervision. `null` and empty lists: nobody has entered it. */
export interface BidEntries {
  /** The day of the bid, as `2026-05-12`; quotes are judged by it, never by the clock. */
  readonly date: string | null;
  readonly validUntil: string | null;
  readonly estimateClass: EstimateClass | null;
  readonly wastePercent: number | null;
  readonly escalationPercent: number | null;
  /** In place of the spares that the rules for ordering give, at their prices; 0 where the material holds them. */
  readonly spares: number | null;
  /** What the owner brings and we install: in the hours, neither bought nor taxed. */
  readonly ownerFurnished: readonly UnitItem[];
  readonly freight: number | null;
  readonly consumables: number | null;
  /** Of the labour. */
  readonly consumablesPercent: number | null;
  readonly permit: number | null;
  readonly bond: BondEntry | null;
  readonly taxes: readonly TaxEntry[];
  readonly quotes: readonly Quote[];
  readonly timed: readonly TimedEntry[];
  readonly subcontracts: readonly SubcontractEntry[];
  readonly alternates: readonly AlternateEntry[];
  readonly unitPrices: readonly UnitPriceEntry[];
  readonly inclusions: readonly string[];
  readonly exclusions: readonly string[];
  readonly qualifications: readonly string[];
  readonly addenda: readonly Addendum[];
}
