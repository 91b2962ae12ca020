/** Weeks of a schedule that the table speaks of. */
const MOST_WEEKS = 16;

export type Schedule = 50 | 60 | 72 | 84;

/** Part of the work that is lost, by hours a week and week of such work. */
const LOST: Readonly<Record<Schedule, readonly number[]>> = {
  50: [0.05, 0.07, 0.08, 0.09, 0.15, 0.16, 0.24, 0.23, 0.26, 0.28, 0.28, 0.29, 0.31, 0.32, 0.33, 0.34],
  60: [0.09, 0.12, 0.14, 0.19, 0.24, 0.28, 0.33, 0.36, 0.38, 0.39, 0.4, 0.41, 0.44, 0.45, 0.46, 0.47],
  72: [0.14, 0.2, 0.27, 0.32, 0.37, 0.42, 0.46, 0.49, 0.5, 0.51, 0.52, 0.53, 0.54, 0.55, 0.56, 0.57],
  84: [0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.53, 0.56, 0.57, 0.58, 0.59, 0.6, 0.61, 0.62, 0.63, 0.64],
};

/**
 * Part of an hour's work that is done over the first weeks of scheduled overtime: 1 less the mean loss. A suggestion for
 * whoever states the productivity of such a week, and never put in for him. Weeks from 1 to 16; throws outside.
 *
 * Source: Storm, Industrial Process Plant Construction Estimating and Man-Hour Analysis, table 9 (seen in a secondary copy).
 * Example: 50 hours a week for four weeks keep 1 - (0.05 + 0.07 + 0.08 + 0.09) / 4 = 0.9275.
 */
export function overtimeProductivity(schedule: Schedule, weeks: number): number {
  if (!Number.isInteger(weeks) || weeks < 1 || weeks > MOST_WEEKS)
    throw new RangeError(`The table speaks of weeks 1 to ${MOST_WEEKS}, not of ${weeks}.`);
  const lost = LOST[schedule].slice(0, weeks).reduce((sum, part) => sum + part, 0);
  return 1 - lost / weeks;
}
