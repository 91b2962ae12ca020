import type { Activity, Labour } from '../labour/result.ts';
import type { RunLayout } from '../layout/result.ts';
import type { Bid, Job } from '../model.ts';
import type { TakeoffLine } from '../takeoff/result.ts';
import { toMm } from '../units/length.ts';
import type { UnitItem, UnitPriceEntry } from './bid-entries.ts';
import type { Bought } from './bought.ts';
import { markFactor } from './marks.ts';
import type { PricedLine, UnitPrice, UnitPrices } from './result.ts';
import { taxPercentOn } from './tax-lines.ts';
import { unitMaterial } from './unit-material.ts';

interface Counted {
  readonly job: Job;
  readonly bid: Bid;
  readonly layouts: readonly RunLayout[];
  readonly takeoff: readonly TakeoffLine[];
  readonly labour: Labour | null;
  readonly priced: readonly PricedLine[];
  readonly bought: Bought;
  readonly cost: number;
  readonly price: number;
}

/**
 * The price of one of each thing that the bid form asks for, from the same build-up: its material with waste, escalation
 * and tax, its likely hours at the cost of a productive one with consumables and tax, then overhead, bond and profit.
 * Contingency and what is entered as a sum are in no unit price: `remainder` is the price less all that the unit prices
 * extend to, so that both together are the price. Sections are priced by the foot or metre. Minor units.
 *
 * Source: the trade's unit-price schedule, which must agree with the bid (domain rules §5).
 * Example: 20 tap-offs at 312.40 extend to 6,248.00; of a price of 10,000.00 there remain 3,752.00.
 */
export function priceUnits(counted: Counted): UnitPrices | null {
  if (counted.bid.unitPrices.length === 0) return null;
  const lines = counted.bid.unitPrices.map((entry) => priceUnit(entry, counted));
  return {
    lines,
    factor: markFactor(counted.bid, counted.cost),
    remainder: counted.price - lines.reduce((sum, { extended }) => sum + (extended ?? 0), 0),
  };
}

function priceUnit(entry: UnitPriceEntry, counted: Counted): UnitPrice {
  const { bid, labour } = counted;
  const { unit, quantity } = quantityOf(entry.item, counted);
  const material = quantity === 0 ? null : unitMaterial(entry, quantity, counted);
  const hours = quantity === 0 ? 0 : hoursOf(entry.item, labour) / quantity;
  const rate = labour?.costPerProductiveHour ?? 0;
  const consumed = 1 + (bid.consumablesPercent ?? 0) / 100;
  const consumedTax = ((bid.consumablesPercent ?? 0) / 100) * (taxPercentOn(bid, 'consumables') / 100);
  const work = hours * rate * (consumed + taxPercentOn(bid, 'labour') / 100 + consumedTax);
  const cost = material === null ? null : material.loaded + work;
  const worked = cost === null ? null : Math.round(cost * markFactor(bid, counted.cost));
  const used = entry.offered ?? worked;
  return {
    item: entry.item,
    unit,
    quantity,
    material: material?.bare ?? null,
    hours,
    cost,
    worked,
    offered: entry.offered,
    extended: used === null ? null : Math.round(used * quantity),
  };
}

const FOOT_MM = 304.8;

function quantityOf(item: UnitItem, { job, layouts, takeoff }: Counted): Pick<UnitPrice, 'unit' | 'quantity'> {
  if (item === 'joint-kit')
    return { unit: 'each', quantity: layouts.reduce((sum, { ok, joints }) => sum + (ok ? joints.length : 0), 0) };
  const own = takeoff.filter((line) => line.item === item);
  if (item === 'section' || item === 'slot-closure') {
    const mm = own.reduce((sum, line) => sum + lengthOf(line), 0);
    const isFeet = job.project.units === 'ft-in';
    return { unit: isFeet ? 'ft' : 'm', quantity: Number((mm / (isFeet ? FOOT_MM : 1000)).toFixed(4)) };
  }
  return { unit: 'each', quantity: own.reduce((sum, { quantity }) => sum + quantity, 0) };
}

/** Sections are counted by the piece with their length, slot closure by the length itself, in metres. */
function lengthOf({ item, length, quantity }: TakeoffLine): number {
  return item === 'section' ? quantity * toMm(length ?? 0) : quantity * 1000;
}

/** Which work of the labour book belongs to one of it. */
const WORK: Readonly<Record<UnitItem, readonly Activity[]>> = {
  section: ['handle-section', 'lay-out', 'section'],
  elbow: ['elbow'],
  tee: ['tee'],
  'joint-kit': ['joint', 'test-joint'],
  'end-feed': ['end-feed', 'termination'],
  'end-cap': ['end-cap'],
  support: ['support'],
  tap: ['handle-tap', 'tap', 'test-tap'],
  drop: ['drop'],
  'fire-seal': ['fire-seal'],
  label: ['label'],
  'slot-closure': ['slot-closure'],
};

function hoursOf(item: UnitItem, labour: Labour | null): number {
  const own = new Set<string>(WORK[item]);
  return (labour?.byActivity ?? []).reduce((sum, { activity, hours }) => sum + (own.has(activity) ? hours : 0), 0);
}
