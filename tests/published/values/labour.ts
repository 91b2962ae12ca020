import { computeLabour } from '../../../src/domain/labour/compute-labour.ts';
import { overtimeFactor } from '../../../src/domain/labour/crew-cost.ts';
import { learningFactor } from '../../../src/domain/labour/learning-curve.ts';
import { pertMean, publishedPertVariance } from '../../../src/domain/labour/pert.ts';
import { overtimeProductivity, type Schedule } from '../../../src/domain/labour/scheduled-overtime.ts';
import { aJob, aLabourBook } from '../../support/job.ts';
import type { Calculation } from '../published.ts';

const unitHours = ({ T1_h, n, rate }: { T1_h: number; n: number; rate: number }) => T1_h * learningFactor(n, 1, rate);

const learningTable = ({ rate, n }: { rate: number; n: readonly number[] }) => ({
  unit: n.map((repeat) => learningFactor(repeat, 1, rate)),
  cumulative: n.map((last) =>
    Array.from({ length: last }, (_, i) => learningFactor(i + 1, 1, rate)).reduce((sum, part) => sum + part, 0),
  ),
});

/** As the source does: the curve summed from half a unit to half a unit past the last, in steps fine enough not to show. */
const allUnits = ({ T1_h, n, rate }: { T1_h: number; n: number; rate: number }) => {
  const steps = 200_000;
  const width = n / steps;
  const at = (i: number) => unitHours({ T1_h, n: 0.5 + (i + 0.5) * width, rate });
  return Array.from({ length: steps }, (_, i) => at(i) * width).reduce((sum, hours) => sum + hours, 0);
};

/** Of Wright's curve: what n units take together less what n - 1 take, where the average of them follows the curve. */
const unitOfAverages = ({ T1_h, n, rate }: { T1_h: number; n: number; rate: number }) =>
  n * unitHours({ T1_h, n, rate }) - (n - 1) * unitHours({ T1_h, n: n - 1, rate });

interface Activity {
  readonly a: number;
  readonly m: number;
  readonly b: number;
}

const pert = ({ a, m, b }: Activity) => ({
  mean: pertMean({ low: a, likely: m, high: b }),
  variance: publishedPertVariance({ low: a, likely: m, high: b }),
});

const pertPath = ({ activities }: { activities: readonly Activity[] }) => ({
  mean: activities.reduce((sum, activity) => sum + pert(activity).mean, 0),
  variance: activities.reduce((sum, activity) => sum + pert(activity).variance, 0),
});

/** Hours of one, times how many. */
const hoursAtRate = ({ hours_per_sf, quantity_sf }: { hours_per_sf: number; quantity_sf: number }) => {
  const extra = { item: 'work', level: null, quantity: quantity_sf, unit: 'sf', price: null, note: null };
  const job = aJob({ runs: [], labourBook: aLabourBook(), extras: [{ ...extra, hours: hours_per_sf }] });
  return computeLabour(job, [], [])?.range.likely;
};

const overtime = ({
  worked_h,
  straight_h,
  premium,
}: {
  worked_h: readonly number[];
  straight_h: number;
  premium: number;
}) => {
  const factors = worked_h.map((hoursPerWeek) => overtimeFactor({ hoursPerWeek, straightHours: straight_h, premium }));
  return {
    paid_h: worked_h.map((hours, i) => hours * factors[i]!),
    premium_pct: factors.map((factor) => 100 * (factor - 1)),
  };
};

/** The loss of each week, worked back from what the first weeks keep together. */
const overtimeLosses = ({ week, schedules_h }: { week: readonly number[]; schedules_h: readonly Schedule[] }) => {
  const lostBy = (schedule: Schedule, weeks: number) =>
    weeks === 0 ? 0 : weeks * (1 - overtimeProductivity(schedule, weeks));
  return Object.fromEntries(
    schedules_h.map((schedule) => [
      schedule,
      week.map((at) => Number((lostBy(schedule, at) - lostBy(schedule, at - 1)).toFixed(9))),
    ]),
  );
};

export const calculations: Readonly<Record<string, Calculation>> = {
  'lc-unit125-80': unitHours,
  'lc-unit125-85': unitHours,
  'lc-cum125-appx': allUnits,
  'lc-wright-2200': unitOfAverages,
  'lc-table-80': learningTable,
  'lc-table-85': learningTable,
  'lc-table-90': learningTable,
  'lc-table-95': learningTable,
  'pert-act1': pert,
  'pert-act2': pert,
  'pert-act3': pert,
  'pert-act4': pert,
  'pert-act5': pert,
  'pert-act6': pert,
  'pert-act7': pert,
  'pert-project': pertPath,
  'ot-table': overtimeLosses,
  'ot-premium-48': overtime,
  'ot-premium-50-60': overtime,
  'labor-rate-1': hoursAtRate,
  'labor-rate-2': hoursAtRate,
};
