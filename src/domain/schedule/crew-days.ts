/**
 * Whole working days that a crew needs: `labour hours / (heads x hours a day)`, rounded up. Labour hours, never crew
 * hours: they hold the non-productive share already, so no productive share is taken off again.
 *
 * Source: common practice (labour hours = heads x days x hours a day).
 * Example: 96 labour hours, two heads of 8 hours: 6 days.
 */
export function crewDays(labourHours: number, heads: number, hoursPerDay: number): number {
  if (!(heads > 0) || !(hoursPerDay > 0)) throw new RangeError('a crew needs heads and hours');
  // A ten-thousandth of a day is no day: hours are sums of decimals.
  return Math.max(0, Math.ceil(labourHours / (heads * hoursPerDay) - 1e-4));
}
