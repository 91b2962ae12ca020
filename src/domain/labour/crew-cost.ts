import type { LabourBook } from '../model.ts';

/**
 * What one productive hour costs, in minor units and unrounded: sum(n x paid rate) / sum(n x effectiveness).
 * null without a crew, and for a crew that has no productive hour.
 *
 * Source: the trade's composite rate (common practice).
 * Example: a foreman with half his time on the tools at 98, two at 88 and an apprentice at 58 who counts 0.75 cost
 * 332 / 3.25 = 102.15 an hour, and not their mean of 83.
 */
export function costPerProductiveHour(crew: LabourBook['crew']): number | null {
  const paid = crew.reduce((sum, member) => sum + member.number * member.ratePerHour, 0);
  const productive = crew.reduce((sum, member) => sum + member.number * member.effectiveness, 0);
  return productive > 0 ? paid / productive : null;
}
