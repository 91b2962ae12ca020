import type { Bid } from '../model.ts';
import type { UnitPriceEntry } from './bid-entries.ts';
import type { Bought } from './bought.ts';
import { holds } from './held.ts';
import type { PricedLine } from './result.ts';
import { taxPercentOn } from './tax-lines.ts';

/** Material of one thing. */
export interface UnitMaterial {
  /** Of one, in minor units, unrounded: as bought, and with waste, escalation and tax. */
  readonly bare: number;
  readonly loaded: number;
}

/**
 * The material of one of so many: what was entered for it, or the chosen quote's own line, or the prices of the types. null
 * where it is nowhere priced alone. Waste, escalation and tax are on it as they are on the bid's material.
 *
 * Example: 200.00 at 3 % waste and 7 % tax is 220.42.
 */
export function unitMaterial(
  entry: UnitPriceEntry,
  quantity: number,
  { bid, bought, priced }: { readonly bid: Bid; readonly bought: Bought; readonly priced: readonly PricedLine[] },
): UnitMaterial | null {
  if (bid.ownerFurnished.includes(entry.item)) return { bare: 0, loaded: 0 };
  const quote = bought.chosen.find((chosen) => holds(chosen, entry.item));
  const tax = 1 + taxPercentOn(bid, 'materials') / 100;
  const escalated = 1 + (bid.escalationPercent ?? 0) / 100;
  const wasted = 1 + (bid.wastePercent ?? 0) / 100;
  if (entry.material !== null) return { bare: entry.material, loaded: entry.material * wasted * escalated * tax };
  if (quote !== undefined) {
    const own = quote.lines.filter(({ item }) => item === entry.item);
    if (own.length === 0 || own.some(({ amount }) => amount === null)) return null;
    const held = quote.firm ? 1 : escalated;
    const sum = (state: 'priced' | 'lacks') =>
      own.reduce((total, line) => total + (line.state === state ? (line.amount ?? 0) : 0), 0);
    const bare = (sum('priced') + sum('lacks')) / quantity;
    const taxed =
      quote.tax === 'in' ? (sum('priced') * held + sum('lacks') * held * tax) / quantity : bare * held * tax;
    return { bare, loaded: taxed };
  }
  const own = priced.filter(({ key }) => key === entry.item);
  if (bid.materials !== null || own.length === 0 || own.some(({ amount }) => amount === null)) return null;
  const bare = own.reduce((sum, { amount }) => sum + (amount ?? 0), 0) / quantity;
  return { bare, loaded: bare * wasted * escalated * tax };
}
