import jStat from 'jstat';
import type { ThreePoint } from '../model.ts';
import { pertShape } from './pert.ts';

/** Table nodes stand every 1/32 of a standard deviation from -6 to +6. */
const PER_UNIT = 32;
const REACH = 6;
export const TABLE_NODES = 2 * REACH * PER_UNIT + 1;
export const NODE_STEP = 1 / PER_UNIT;
export const TABLE_REACH = REACH;

/**
 * Quantiles of a PERT-beta estimate at the table's nodes, `table[i]` at the standard normal deviate -6 + i/32. Over the
 * normal deviate the curve is smooth, so that straight lines between nodes stay within 1e-4 of the range low to high,
 * and a trial needs neither the normal nor the beta distribution. Shapes are worked once per `shapes`.
 */
export function quantileTable(estimate: ThreePoint, shapes: Map<number, Float64Array>): Float64Array {
  const shape = pertShape(estimate);
  if (!shape) return new Float64Array(TABLE_NODES).fill(estimate.low);
  const unit = shapes.get(shape.alpha) ?? unitTable(shape.alpha, shape.beta);
  shapes.set(shape.alpha, unit);
  return unit.map((value) => estimate.low + value * (estimate.high - estimate.low));
}

/** The table's value at a standard normal deviate; deviates beyond 6 (two in a thousand million) count as 6. */
export function readTable(table: Float64Array, deviate: number): number {
  const place = (Math.min(REACH, Math.max(-REACH, deviate)) + REACH) * PER_UNIT;
  const node = Math.min(TABLE_NODES - 2, Math.floor(place));
  const left = table[node]!;
  return left + (place - node) * (table[node + 1]! - left);
}

function unitTable(alpha: number, beta: number): Float64Array {
  return Float64Array.from({ length: TABLE_NODES }, (_, i) =>
    jStat.beta.inv(jStat.normal.cdf(i / PER_UNIT - REACH, 0, 1), alpha, beta),
  );
}
