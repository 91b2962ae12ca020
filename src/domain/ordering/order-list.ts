import type { UnitItem } from '../bid/bid-entries.ts';
import { isFor } from '../bid/held.ts';
import type { Level } from '../model.ts';
import { groupBy } from '../takeoff/group-by.ts';
import { daysBefore, type Manning, type Need, needDate } from './need-dates.ts';
import type { OrderThing } from './order-things.ts';
import { ORDER_ITEMS, type Ordering } from './ordering.ts';
import type { SpareLine } from './spares.ts';

/** `work`: what the job takes in; the others are ordered beyond that. */
export type Purpose = 'work' | 'waste' | 'spare' | 'owner';

export interface OrderLine extends OrderThing {
  readonly purpose: Purpose;
  /** The owner furnishes it: needed then, and not bought. */
  readonly byOwner: boolean;
  readonly need: Need;
  /** The last day to place the order; null without a need date or a lead time. */
  readonly orderBy: string | null;
}

/** What goes on one order: one level's lines (null: the whole job's) of one need date and one last day to order. */
export interface Order {
  readonly level: string | null;
  /** 1 for the first order of its level. */
  readonly number: number;
  readonly need: Need;
  readonly orderBy: string | null;
  readonly lines: readonly OrderLine[];
}

/**
 * Everything to order, by level in the order of work and then by date; what has no date comes last and says why. Fittings
 * of different hands are lines of their own. Waste and spares are ordered with the first of their thing, the owner's
 * spares with the last.
 *
 * Source: last day to order = need on the floor less lead time, common practice. Calendar days.
 * Example: sections needed on 2026-05-04 with a lead time of 42 days are ordered by 2026-03-23.
 */
export function orderList(
  things: readonly OrderThing[],
  spares: readonly SpareLine[],
  of: {
    readonly levels: readonly Level[];
    readonly ordering: Ordering | null;
    readonly manning: Manning | null;
    /** What the owner furnishes, by the bid. */
    readonly byOwner?: readonly UnitItem[];
  },
): readonly Order[] {
  const { levels, ordering, manning, byOwner = [] } = of;
  const inOrder = [...levels].sort((a, b) => a.order - b.order).map(({ id }) => id);
  const which = ordering?.plan ?? 'continuous';
  const needAt = (thing: OrderThing, level: string) => needDate(manning, which, level, thing.item);
  const needOf = (thing: OrderThing, end: 'first' | 'last'): Need => {
    if (thing.level !== null) return needAt(thing, thing.level);
    const from = new Set(thing.parts.flatMap((part) => part.level ?? []));
    const places = from.size === 0 ? inOrder : inOrder.filter((level) => from.has(level));
    return (
      outermost(
        places.map((level) => needAt(thing, level)),
        end,
      ) ?? needAt(thing, '')
    );
  };
  const line = (thing: OrderThing, purpose: Purpose): OrderLine => {
    const need = needOf(thing, purpose === 'owner' ? 'last' : 'first');
    const lead = ordering?.leadDays.get(thing.item);
    const orderBy = need.date === null || lead === undefined ? null : daysBefore(need.date, lead);
    return { ...thing, purpose, byOwner: byOwner.some((item) => isFor(thing.item, item)), need, orderBy };
  };
  const lines = [
    ...things.map((thing) => line(thing, 'work')),
    ...spares.flatMap((spare) => spareThings(spare).map(({ thing, purpose }) => line(thing, purpose))),
  ];
  return ordersOf(lines, inOrder);
}

function spareThings(spare: SpareLine): { thing: OrderThing; purpose: Purpose }[] {
  const { rule: _rule, needed: _needed, waste, spare: extra, owner, ...thing } = spare;
  const of = (purpose: Purpose, quantity: number) =>
    quantity > 0 ? [{ purpose, thing: { ...thing, level: null, quantity } }] : [];
  return [...of('waste', waste), ...of('spare', extra), ...of('owner', owner)];
}

/** The first or the last of the dates there are; where there is none, the first reason. */
function outermost(needs: readonly Need[], end: 'first' | 'last'): Need | null {
  const dated = needs.filter((need) => need.date !== null).sort((a, b) => (a.date < b.date ? -1 : 1));
  return (end === 'first' ? dated[0] : dated.at(-1)) ?? needs[0] ?? null;
}

function ordersOf(lines: readonly OrderLine[], levels: readonly string[]): Order[] {
  const place = new Map(levels.map((level, index) => [level, index]));
  const levelOf = (line: { level: string | null }) => place.get(line.level ?? '') ?? levels.length;
  const orders = groupBy(lines, ({ level, need, orderBy }) => JSON.stringify([level, need.date, need.why, orderBy]))
    .map((group) => ({
      level: group[0].level,
      need: group[0].need,
      orderBy: group[0].orderBy,
      lines: [...group].sort(inItemOrder),
    }))
    .sort((a, b) => levelOf(a) - levelOf(b) || compareDates(a, b));
  const counted = new Map<string | null, number>();
  return orders.map((order) => {
    const number = (counted.get(order.level) ?? 0) + 1;
    counted.set(order.level, number);
    return { ...order, number };
  });
}

type Dated = Pick<Order, 'need' | 'orderBy'>;

function compareDates(a: Dated, b: Dated): number {
  return (
    compareText(a.orderBy ?? a.need.date, b.orderBy ?? b.need.date) ||
    compareText(a.need.date, b.need.date) ||
    compareText(a.need.why, b.need.why)
  );
}

/** ISO dates sort as text; nothing comes last. */
function compareText(a: string | null, b: string | null): number {
  if (a === b) return 0;
  if (a === null) return 1;
  return b === null || a < b ? -1 : 1;
}

const PURPOSES: readonly Purpose[] = ['work', 'waste', 'spare', 'owner'];

function inItemOrder(a: OrderLine, b: OrderLine): number {
  return (
    PURPOSES.indexOf(a.purpose) - PURPOSES.indexOf(b.purpose) ||
    ORDER_ITEMS.indexOf(a.item) - ORDER_ITEMS.indexOf(b.item) ||
    (b.length ?? 0) - (a.length ?? 0)
  );
}
