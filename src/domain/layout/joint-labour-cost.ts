import { baseHours } from '../labour/base-hours.ts';
import { crewHour } from '../labour/crew-cost.ts';
import type { LabourBook } from '../model.ts';

/**
 * What the labour of one joint costs in the choice of a covering, minor units: likely base hours of activity `joint` on
 * busway of this rated current, times the cost of a productive hour (`crewHour`), rounded once. Conditions and learning stay
 * out: they would move every covering alike. 0 without a labour book, a crew or that activity.
 */
export function jointLabourCost(book: LabourBook | null, ratedCurrentA: number): number {
  const joint = book?.activities.find((activity) => activity.id === 'joint');
  if (!book || joint === undefined) return 0;
  const { paid, productive } = crewHour(book);
  return productive > 0 ? Math.round((baseHours(joint, null, ratedCurrentA).likely * paid) / productive) : 0;
}

/** Whether a joint costs the same labour by two books, on busway of any rated current. */
export function isJointLabourAlike(a: LabourBook | null, b: LabourBook | null): boolean {
  const joints = [a, b].flatMap((book) => book?.activities.filter(({ id }) => id === 'joint') ?? []);
  const steps = joints.flatMap(({ bands }) => bands.flatMap(({ upToA }) => upToA ?? []));
  return [...steps, Number.POSITIVE_INFINITY].every(
    (amperes) => jointLabourCost(a, amperes) === jointLabourCost(b, amperes),
  );
}
