import type { RunLayout } from '../layout/result.ts';
import type { BuswayType, Job, UnitSystem } from '../model.ts';
import type { TakeoffLine } from '../takeoff/result.ts';
import { formatLength } from '../units/format-length.ts';
import type { Length } from '../units/length.ts';
import { PRICED_PIECES, sectionPieceOf } from './piece-price.ts';
import type { PricedLine } from './result.ts';

/**
 * The takeoff at the prices of its types, one line for each thing of a type. Minor units. A thing without a price has
 * `price` and `amount` null and is never counted as nought. A support's price is that of one complete (rod, nuts and
 * anchor in it), a joint's that of its kit. Seals, labels and slot closure have no price in a type: they are left out.
 *
 * Source: the job document (prices of a busway type).
 * Example: 192 sections of 20 ft at 820.00 are one line of 157,440.00.
 */
export function priceTakeoff(
  job: Job,
  layouts: readonly RunLayout[],
  takeoff: readonly TakeoffLine[],
): readonly PricedLine[] {
  return job.types.flatMap((type) => [
    ...sectionLines(type, takeoff, job.project.units),
    ...pieceLines(type, takeoff),
    ...jointLine(type, job, layouts),
  ]);
}

function sectionLines(type: BuswayType, takeoff: readonly TakeoffLine[], units: UnitSystem): PricedLine[] {
  const counts = new Map<string, { kind: string; length: Length; quantity: number }>();
  for (const line of takeoff) {
    if (line.item !== 'section' || line.type !== type.id || line.length === null) continue;
    const key = `${line.kind} ${line.length}`;
    const known = counts.get(key) ?? { kind: line.kind ?? 'stock', length: line.length, quantity: 0 };
    known.quantity += line.quantity;
    counts.set(key, known);
  }
  return [...counts.values()]
    .sort((a, b) => b.length - a.length || (a.kind > b.kind ? -1 : 1))
    .map(({ kind, length, quantity }) => ({
      type: type.id,
      key: 'section',
      item: 'section',
      detail: `${kind} ${formatLength(length, units)}`,
      ...amounts(quantity, sectionPieceOf(type.prices, kind, length)),
    }));
}

function pieceLines(type: BuswayType, takeoff: readonly TakeoffLine[]): PricedLine[] {
  return PRICED_PIECES.flatMap(([item, price, word]) => {
    const quantity = takeoff
      .filter((line) => line.item === item && line.type === type.id)
      .reduce((sum, line) => sum + line.quantity, 0);
    return quantity === 0
      ? []
      : [{ type: type.id, key: item, item: word, detail: null, ...amounts(quantity, type.prices[price]) }];
  });
}

function jointLine(type: BuswayType, job: Job, layouts: readonly RunLayout[]): PricedLine[] {
  const own = new Set(job.runs.filter((run) => run.type === type.id).map((run) => run.id));
  const joints = layouts.filter((layout) => own.has(layout.run)).reduce((sum, layout) => sum + layout.joints.length, 0);
  if (joints === 0) return [];
  return [
    { type: type.id, key: 'joint-kit', item: 'joint kit', detail: null, ...amounts(joints, type.prices.jointKit) },
  ];
}

function amounts(quantity: number, price: number | null) {
  return { quantity, price, amount: price === null ? null : Math.round(quantity * price) };
}
