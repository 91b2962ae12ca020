import type { LabourBook, Overtime } from '../model.ts';

type Crew = Pick<LabourBook, 'crew' | 'overtime'>;

/**
 * What one productive hour costs, in minor units and unrounded: sum(n x paid rate x (1 + burden)) x overtime factor /
 * (sum(n x effectiveness) x productivity of such a week). null without a crew, and for a crew that has no productive hour.
 *
 * Source: the trade's composite rate (common practice).
 * Example: a foreman with half his time on the tools at 98, two at 88 and an apprentice at 58 who counts 0.75 cost
 * 332 / 3.25 = 102.15 an hour, and not their mean of 83.
 */
export function costPerProductiveHour(book: Crew): number | null {
  const { paid, productive } = crewHour(book);
  return productive > 0 ? paid / productive : null;
}

/** One hour of the whole crew: what is paid for it, in minor units, and how many productive hours it holds. */
export function crewHour({ crew, overtime }: Crew): { readonly paid: number; readonly productive: number } {
  const paid = crew.reduce(
    (sum, { number, ratePerHour, burdenPercent }) => sum + number * ratePerHour * (1 + burdenPercent / 100),
    0,
  );
  const productive = crew.reduce((sum, member) => sum + member.number * member.effectiveness, 0);
  if (overtime === null) return { paid, productive };
  return { paid: paid * overtimeFactor(overtime), productive: productive * overtime.productivity };
}

/**
 * Hours paid over hours worked in a week with overtime: (straight + premium x beyond) / worked; 1 where none lies beyond.
 *
 * Source: overtime premium as in EI 01D010 (USACE), now UFC 3-700-02A, example 5-1: 48 hours worked, 40 straight, time and
 * a half, are 52 hours paid, 8.33 % more.
 */
export function overtimeFactor({ hoursPerWeek, straightHours, premium }: Omit<Overtime, 'productivity'>): number {
  const beyond = Math.max(0, hoursPerWeek - straightHours);
  return (hoursPerWeek - beyond + premium * beyond) / hoursPerWeek;
}
