import type { Fault } from '../fault.ts';
import type { Salvaged } from '../parsing/salvaged.ts';
import { sayNumber } from '../parsing/say.ts';
import type { JobDocument } from '../schema/document.ts';
import { faultAt } from './fault-at.ts';

/** A margin is a part of the price: at 100 % there is no price that gives it. */
export function judgeBid({ bid }: Salvaged<JobDocument>): Fault[] {
  const { kind, percent } = bid?.profit ?? {};
  if (kind !== 'margin' || percent === undefined || percent < 100) return [];
  const message = `A margin of ${sayNumber(percent)} % cannot be reached at any price.`;
  return [faultAt(['bid', 'profit', 'percent'], message, 'Write "markup" if it is on cost, or a margin under 100 %.')];
}
