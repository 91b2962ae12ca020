import { crewHour } from '../labour/crew-cost.ts';
import type { LabourBook } from '../model.ts';

/**
 * What the labour of one joint costs in the choice of a covering, minor units: likely base hours of activity `joint` times
 * the cost of a productive hour (`crewHour`), rounded once. Conditions and learning stay out: they would
 * move every covering alike. 0 without a labour book, a crew or that activity.
 */
export function jointLabourCost(book: LabourBook | null): number {
  const hours = book?.activities.find((activity) => activity.id === 'joint')?.likely ?? 0;
  if (!book) return 0;
  const { paid, productive } = crewHour(book);
  return productive > 0 ? Math.round((hours * paid) / productive) : 0;
}
