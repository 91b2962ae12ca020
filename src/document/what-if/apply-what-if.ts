import type { Touched } from '../../domain/beside/layouts-beside.ts';
import type { Fault } from '../fault.ts';
import type { JobDocument } from '../job-document.ts';
import { changeBook } from './change-book.ts';
import { judgeWhatIf } from './judge-what-if.ts';
import type { WhatIf } from './schema.ts';

export type Applied =
  | { readonly ok: true; readonly document: JobDocument; readonly touched: Touched }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/**
 * A copy of the job with the changes in it, and which runs and types a layout feels them in. The job that comes in is not
 * changed; what the changes name and the job does not have is told, all at once.
 */
export function applyWhatIf(job: JobDocument, change: WhatIf): Applied {
  const faults = judgeWhatIf(job, change);
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
