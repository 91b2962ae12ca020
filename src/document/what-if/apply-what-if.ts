import type { Touched } from '../../domain/beside/layouts-beside.ts';
import type { Fault } from '../fault.ts';
import type { JobDocument, LabourBookDocument } from '../job-document.ts';
import { sayList, sayValue } from '../parsing/say.ts';
import type { WhatIf } from './schema.ts';

export type Applied =
  | { readonly ok: true; readonly document: JobDocument; readonly touched: Touched }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/**
 * A copy of the job with the changes in it, and which runs and types a layout feels them in. The job that comes in is not
 * changed; what the changes name and the job does not have is told, all at once.
 */
export function applyWhatIf(job: JobDocument, change: WhatIf): Applied {
  const faults = [...unknownNames(job, change), ...withoutBook(job, change), ...unevenLegs(job, change)];
  if (faults.length > 0) return { ok: false, faults };
  const withTypes = swapTypes(job, change);
  const document = {
    ...job,
    levels: changeLevels(job.levels, change),
    buswayTypes: job.buswayTypes.map((type) => {
      const stock = change.stock?.findLast((one) => one.type === type.id);
      return stock === undefined ? type : { ...type, stockLengthsMm: [...stock.lengthsMm] };
    }),
    runs: changeRoutes(withTypes, change),
    ...(job.labourBook === undefined ? {} : { labourBook: changeBook(job.labourBook, change) }),
  };
  const was = new Map(job.runs.map((run) => [run.id, run]));
  const runs = new Set(document.runs.filter((run) => was.get(run.id) !== run).map((run) => run.id));
  return { ok: true, document, touched: { runs, types: new Set((change.stock ?? []).map(({ type }) => type)) } };
}

function unknownNames(job: JobDocument, change: WhatIf): Fault[] {
  const levels = new Set(job.levels.map(({ id }) => id));
  const types = new Set(job.buswayTypes.map(({ id }) => id));
  const runs = new Set(job.runs.map(({ id }) => id));
  const activities = new Set(Object.keys(job.labourBook?.activities ?? {}));
  const need = (path: string, noun: string, known: ReadonlySet<string>, name: string | null): Fault[] => {
    if (name === null || known.has(name)) return [];
    const some = [...known].slice(0, 6);
    const remedy = some.length === 0 ? `The job has none.` : `Name one of the job, such as ${sayList(some, 'or')}.`;
    return [{ path, message: `The job has no ${noun} ${sayValue(name)}.`, remedy }];
  };
  return [
    ...(change.conditions ?? []).flatMap((one, i) => need(`conditions[${i}].level`, 'level', levels, one.level)),
    ...(change.activities ?? []).flatMap((one, i) =>
      need(`activities[${i}].activity`, 'hours for', activities, one.activity),
    ),
    ...(change.types ?? []).flatMap((one, i) => [
      ...need(`types[${i}].from`, 'busway type', types, one.from),
      ...need(`types[${i}].to`, 'busway type', types, one.to),
      ...need(`types[${i}].level`, 'level', levels, one.level),
    ]),
    ...(change.stock ?? []).flatMap((one, i) => need(`stock[${i}].type`, 'busway type', types, one.type)),
    ...(change.routes ?? []).flatMap((one, i) => need(`routes[${i}].run`, 'run', runs, one.run)),
  ];
}

function withoutBook(job: JobDocument, change: WhatIf): Fault[] {
  const named = (['policy', 'nonProductivePercent', 'learning', 'factors'] as const).filter(
    (key) => change[key] !== undefined,
  );
  const message = 'The job has no labour book, so no hours can differ.';
  const remedy = 'Enter a labour book, or take one from the shelf, first.';
  return job.labourBook === undefined ? named.map((path) => ({ path, message, remedy })) : [];
}

function unevenLegs(job: JobDocument, change: WhatIf): Fault[] {
  return (change.routes ?? []).flatMap(({ run: id, legsMm }, i) => {
    const legs = job.runs.find((run) => run.id === id)?.legs.length;
    if (legs === undefined || legsMm === undefined || legsMm.length === legs) return [];
    const message = `${id} has ${legs} ${legs === 1 ? 'leg' : 'legs'}, and ${legsMm.length} ${legsMm.length === 1 ? 'length is' : 'lengths are'} given.`;
    return [
      { path: `routes[${i}].legsMm`, message, remedy: 'Give each leg its length, in order, separated by semicolons.' },
    ];
  });
}

function changeLevels(levels: JobDocument['levels'], { conditions = [] }: WhatIf): JobDocument['levels'] {
  return levels.map((level) => {
    const own = conditions.filter((one) => one.level === null || one.level === level.id);
    if (own.length === 0) return level;
    const changes = own.map(({ level: _level, ...rest }) => rest);
    return { ...level, conditions: Object.assign({}, level.conditions, ...changes) };
  });
}

function swapTypes(job: JobDocument, { types = [] }: WhatIf): JobDocument['runs'] {
  return job.runs.map((run) => {
    const swap = types.findLast(({ from, level }) => from === run.type && (level === null || level === run.level));
    return swap === undefined || swap.to === run.type ? run : { ...run, type: swap.to };
  });
}

function changeRoutes(runs: JobDocument['runs'], { routes = [] }: WhatIf): JobDocument['runs'] {
  return runs.map((run) => {
    const route = routes.findLast((one) => one.run === run.id);
    if (route === undefined) return run;
    const { legsMm, dropMm } = route;
    const legs = run.legs.map((leg, i) => ({ ...leg, lengthMm: legsMm?.[i] ?? leg.lengthMm }));
    return { ...run, ...(dropMm === undefined ? {} : { dropMm }), legs };
  });
}

function changeBook(book: LabourBookDocument, change: WhatIf): LabourBookDocument {
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
