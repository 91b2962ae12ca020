import type { Fault, PathPart } from '../fault.ts';
import { suggester } from '../parsing/nearest-word.ts';
import type { Salvaged } from '../parsing/salvaged.ts';
import { sayList, sayValue } from '../parsing/say.ts';
import type { JobDocument } from '../schema/document.ts';
import { faultAt } from './fault-at.ts';

type Run = NonNullable<NonNullable<Salvaged<JobDocument>['runs']>[number]>;

/** Whatever a run or an extra names is in the document: its level, its type, its pair. Feeds have their own rule. */
export function judgeReferences(document: Salvaged<JobDocument>): Fault[] {
  const judgeLevel = nameJudge('level', labelsOf(document.levels));
  const judgeType = nameJudge('busway type', labelsOf(document.buswayTypes));
  const runs = document.runs ?? [];
  return [
    ...runs.flatMap((run, i) => [
      ...judgeLevel(['runs', i, 'level'], run?.level),
      ...judgeType(['runs', i, 'type'], run?.type),
    ]),
    ...judgePairs(runs),
    ...(document.extras ?? []).flatMap((extra, i) => judgeLevel(['extras', i, 'level'], extra?.level)),
  ];
}

export type NameJudge = (path: readonly PathPart[], name: string | undefined) => Fault[];

/** Finds fault with a name that no `noun` has as its label, and offers the label that was probably meant. */
export function nameJudge(noun: string, known: ReadonlySet<string> | undefined): NameJudge {
  const some = [...(known ?? [])].slice(0, 8).map(sayValue);
  const suggest = suggester(known ?? []);
  const orElse =
    some.length === 0
      ? `Add the ${noun} to the document.`
      : `Add the ${noun}, or use one that is there, such as ${sayList(some, 'or')}.`;
  return (path, name) => {
    if (name === undefined || !known || known.has(name)) return [];
    const meant = suggest(name);
    const remedy = meant ? `Did you mean ${sayValue(meant)}?` : orElse;
    return [faultAt(path, `There is no ${noun} ${sayValue(name)}.`, remedy)];
  };
}

/** The labels of a list; undefined where the list itself is missing, which is a fault of its own. */
function labelsOf(items?: readonly ({ readonly id?: string | undefined } | undefined)[]): Set<string> | undefined {
  return items && new Set(items.flatMap((item) => (item?.id === undefined ? [] : [item.id])));
}

function judgePairs(runs: readonly (Run | undefined)[]): Fault[] {
  const byId = new Map(runs.flatMap((run) => (run?.id === undefined ? [] : [[run.id, run] as const])));
  const known = new Set(byId.keys());
  const judgeRun = nameJudge('run', known);
  return runs.flatMap((run, i) => {
    if (run?.pairedRun === undefined) return [];
    const path = ['runs', i, 'pairedRun'];
    return known.has(run.pairedRun) ? judgePair(run, path, byId) : judgeRun(path, run.pairedRun);
  });
}

function judgePair(run: Run, path: readonly PathPart[], byId: ReadonlyMap<string, Run>): Fault[] {
  if (run.pairedRun === run.id) {
    return [faultAt(path, `Run ${sayValue(run.id)} is paired with itself.`, 'Name the run of the other side.')];
  }
  const back = byId.get(run.pairedRun ?? '')?.pairedRun;
  if (back === undefined || back === run.id || run.id === undefined) return []; // a label is asked for first
  const message = `Run ${sayValue(run.id)} is paired with ${sayValue(run.pairedRun)}, which is paired with ${sayValue(back)}.`;
  return [faultAt(path, message, 'A pair is two runs: let each name the other.')];
}
