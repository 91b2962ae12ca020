import type { AlternateEntry, Quote, UnitPriceEntry } from '../../domain/bid/bid-entries.ts';
import type { Bid } from '../../domain/model.ts';
import type { BidDocument } from '../schema/bid.ts';

/** The entries of a bid as the domain sees them: absent is null or an empty list, never nought. */
export function toBid(bid: BidDocument): Bid {
  return {
    materials: bid.materials ?? null,
    taxPercent: bid.taxPercent ?? null,
    other: bid.other ?? null,
    supervision: bid.supervision ?? null,
    overheadPercent: bid.overheadPercent ?? null,
    profit: bid.profit ?? null,
    contingencyP: bid.contingencyP ?? null,
    date: bid.date ?? null,
    validUntil: bid.validUntil ?? null,
    estimateClass: bid.estimateClass ?? null,
    wastePercent: bid.wastePercent ?? null,
    escalationPercent: bid.escalationPercent ?? null,
    ownerFurnished: bid.ownerFurnished ?? [],
    freight: bid.freight ?? null,
    consumables: bid.consumables ?? null,
    consumablesPercent: bid.consumablesPercent ?? null,
    spares: bid.spares ?? null,
    permit: bid.permit ?? null,
    bond: bid.bond ?? null,
    taxes: bid.taxes ?? [],
    quotes: (bid.quotes ?? []).map(toQuote),
    timed: (bid.timed ?? []).map(({ goesTo = 'equipment', rate = null, once = null, ...entry }) => ({
      ...entry,
      goesTo,
      rate,
      once,
    })),
    subcontracts: (bid.subcontracts ?? []).map(({ item, work = 'other', amount = null }) => ({ item, work, amount })),
    alternates: (bid.alternates ?? []).map(toAlternate),
    unitPrices: (bid.unitPrices ?? []).map(toUnitPrice),
    inclusions: bid.inclusions ?? [],
    exclusions: bid.exclusions ?? [],
    qualifications: bid.qualifications ?? [],
    addenda: (bid.addenda ?? []).map(({ number, date = null, note = null }) => ({ number, date, note })),
  };
}

type Of<Key extends keyof BidDocument> = NonNullable<BidDocument[Key]> extends (infer Item)[] ? Item : never;

function toQuote(quote: Of<'quotes'>): Quote {
  return {
    id: quote.id,
    package: quote.package,
    goesTo: quote.goesTo ?? 'materials',
    supplier: quote.supplier,
    date: quote.date ?? null,
    validUntil: quote.validUntil ?? null,
    freight: quote.freight ?? null,
    freightAmount: quote.freightAmount ?? null,
    tax: quote.tax ?? null,
    taxAmount: quote.taxAmount ?? null,
    firm: quote.firm ?? false,
    chosen: quote.chosen ?? false,
    note: quote.note ?? null,
    lines: quote.lines.map(({ item, detail = null, state, amount = null }) => ({ item, detail, state, amount })),
  };
}

function toAlternate(entry: Of<'alternates'>): AlternateEntry {
  return {
    name: entry.name,
    kind: entry.kind,
    materials: entry.materials ?? null,
    hours: entry.hours ?? null,
    subcontracts: entry.subcontracts ?? null,
    other: entry.other ?? null,
    note: entry.note ?? null,
  };
}

function toUnitPrice({ item, material, offered }: Of<'unitPrices'>): UnitPriceEntry {
  return { item, material: material ?? null, offered: offered ?? null };
}
