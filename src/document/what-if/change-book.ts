import type { LabourBookDocument } from '../job-document.ts';
import type { WhatIf } from './schema.ts';

/** A labour book with the change's policy, percentages, learning and labour units in it. */
export function changeBook(book: LabourBookDocument, change: WhatIf): LabourBookDocument {
  const { nonProductiveDay: _day, learning, ...rest } = book;
  const { policy, nonProductivePercent } = change;
  const learned = changeLearning(book, change);
  return {
    ...rest,
    ...(nonProductivePercent === undefined
      ? book.nonProductiveDay === undefined
        ? {}
        : { nonProductiveDay: book.nonProductiveDay }
      : { nonProductivePercent }),
    ...(policy === undefined ? {} : { policy }),
    ...(learned === undefined ? {} : { learning: learned }),
    ...(change.factors === undefined ? {} : { factors: changeFactors(book.factors, change.factors) }),
    activities: changeHours(book.activities, change),
  };
}

/** A curve that the book does not have yet stands for its first repeat, over runs, unless the change says otherwise. */
function changeLearning(book: LabourBookDocument, { learning }: WhatIf): LabourBookDocument['learning'] {
  if (learning === undefined) return book.learning;
  if (learning === 'none') return undefined;
  const before = book.learning ?? { rate: 1, referenceRepeat: 1, over: 'run' as const };
  return { ...before, ...learning };
}

function changeFactors(
  before: LabourBookDocument['factors'],
  { normalPercent, tightPercent, storeyPercentEach, livePercent }: NonNullable<WhatIf['factors']>,
): LabourBookDocument['factors'] {
  const congestion = before?.congestion ?? { open: 0, normal: 0, tight: 0 };
  return {
    ...before,
    congestion: {
      open: congestion.open,
      normal: normalPercent ?? congestion.normal,
      tight: tightPercent ?? congestion.tight,
    },
    ...(storeyPercentEach === undefined ? {} : { storeyPercentEach }),
    ...(livePercent === undefined ? {} : { livePercent }),
  };
}

type Points = { readonly low: number; readonly likely: number; readonly high: number };

function changeHours(activities: LabourBookDocument['activities'], change: WhatIf): LabourBookDocument['activities'] {
  const changed = (change.activities ?? []).flatMap(({ activity: id, likely }) => {
    const before = activities[id];
    if (before === undefined) return [];
    const scale = (points: Points) => scaled(points, before.likely, likely);
    const bands = before.bands?.map((band) => ({ ...band, ...scale(band) }));
    return [[id, { ...before, ...scale(before), ...(bands === undefined ? {} : { bands }) }] as const];
  });
  return { ...activities, ...Object.fromEntries(changed) };
}

/** In proportion to the likely hours; where these were none, all three points are the new ones. */
function scaled({ low, likely, high }: Points, from: number, to: number): Points {
  if (from === 0) return { low: to, likely: to, high: to };
  const of = (hours: number) => (hours * to) / from;
  return { low: Math.min(of(low), of(likely)), likely: of(likely), high: Math.max(of(high), of(likely)) };
}
