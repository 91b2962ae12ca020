import type { Fault } from '../fault.ts';
import type { JobDocument } from '../job-document.ts';
import { sayList, sayValue } from '../parsing/say.ts';
import type { WhatIf } from './schema.ts';

/** What a change names and the job does not have, all at once, each with what the job has. */
export function judgeWhatIf(job: JobDocument, change: WhatIf): Fault[] {
  return [...unknownNames(job, change), ...withoutBook(job, change), ...unevenLegs(job, change)];
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
