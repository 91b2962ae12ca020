import { INSTALL_ACTIVITIES } from '../../domain/labour/install-activities.ts';
import type { LabourBook } from '../../domain/model.ts';
import { fromMm } from '../../domain/units/length.ts';
import type { LabourBookDocument } from '../schema/labour-book.ts';

const NO_CONGESTION = { open: 0, normal: 0, tight: 0 } as const;

/** The labour book with the contract's defaults: a factor that is not stated adds nothing; bands least first. */
export function toLabourBook(book: LabourBookDocument): LabourBook {
  return {
    version: book.version,
    policy: book.policy,
    activities: Object.entries(book.activities).map(([id, activity]) => ({
      id,
      unit: activity.unit,
      low: activity.low,
      likely: activity.likely,
      high: activity.high,
      bands: toBands(activity.bands),
      factors: activity.factors ?? [],
    })),
    factors: {
      height: toHeightFactors(book.factors?.height),
      congestion: book.factors?.congestion ?? NO_CONGESTION,
      storeyPercentEach: book.factors?.storeyPercentEach ?? 0,
      livePercent: book.factors?.livePercent ?? 0,
    },
    jobConditions: (book.jobConditions ?? []).map(({ name, percent, activities }) => ({
      name,
      percent,
      activities: activities ?? null,
    })),
    learning: toLearning(book),
    nonProductivePercent: book.nonProductivePercent ?? 0,
    nonProductiveDay: book.nonProductiveDay ?? null,
    crew: (book.crew ?? []).map((member) => ({ ...member, burdenPercent: member.burdenPercent ?? 0 })),
    overtime: toOvertime(book.overtime),
    correlation: book.correlation ?? 0,
    trials: book.trials ?? 10_000,
    seed: book.seed ?? 1,
  };
}

function toBands(bands: LabourBookDocument['activities'][string]['bands']): LabourBook['activities'][number]['bands'] {
  return (bands ?? [])
    .map(({ upToA, upToMm, low, likely, high }) => ({
      upToA: upToA ?? null,
      upTo: upToMm === undefined ? null : fromMm(upToMm),
      low,
      likely,
      high,
    }))
    .sort((a, b) => compare(a.upToA, b.upToA) || compare(a.upTo, b.upTo));
}

/** Least first; what a band does not ask comes last. */
function compare(a: number | null, b: number | null): number {
  const [left, right] = [a ?? Number.MAX_VALUE, b ?? Number.MAX_VALUE];
  return left - right;
}

function toHeightFactors(
  height: NonNullable<LabourBookDocument['factors']>['height'],
): LabourBook['factors']['height'] {
  return (height ?? [])
    .map(({ overMm, percent }) => ({ over: fromMm(overMm), percent }))
    .sort((a, b) => a.over - b.over);
}

function toOvertime(overtime: LabourBookDocument['overtime']): LabourBook['overtime'] {
  if (!overtime) return null;
  const { hoursPerWeek, straightHours = 40, premium = 1.5, productivity = 1 } = overtime;
  return { hoursPerWeek, straightHours, premium, productivity };
}

function toLearning(book: LabourBookDocument): LabourBook['learning'] {
  if (!book.learning) return null;
  const { rate, referenceRepeat, over, activities } = book.learning;
  return { rate, referenceRepeat, over, activities: activities ?? INSTALL_ACTIVITIES };
}
