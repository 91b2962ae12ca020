import type { Fault, PathPart } from '../fault.ts';
import { nearestWord } from '../parsing/nearest-word.ts';
import type { Salvaged } from '../parsing/salvaged.ts';
import { sayList, sayValue } from '../parsing/say.ts';
import type { JobDocument } from '../schema/document.ts';
import { faultAt } from './fault-at.ts';

type Run = NonNullable<NonNullable<Salvaged<JobDocument>['runs']>[number]>;

/** Whatever a run or an extra names is in the document: its level, its type, its pair. Feeds have their own rule. */
export function judgeReferences(document: Salvaged<JobDocument>): Fault[] {
  const levels = labelsOf(document.levels);
  const types = labelsOf(document.buswayTypes);
  const runs = document.runs ?? [];
  return [
    ...runs.flatMap((run, i) => [
      ...judgeName('level', ['runs', i, 'level'], run?.level, levels),
      ...judgeName('busway type', ['runs', i, 'type'], run?.type, types),
    ]),
    ...judgePairs(runs),
    ...(document.extras ?? []).flatMap((extra, i) => judgeName('level', ['extras', i, 'level'], extra?.level, levels)),
  ];
}

/** A fault where `name` is given and no `noun` has it as its label; it offers the label that was probably meant. */
export function judgeName(
  noun: string,
  path: readonly PathPart[],
  name: string | undefined,
  known: ReadonlySet<string> | undefined,
): Fault[] {
  if (name === undefined || !known || known.has(name)) return [];
  const meant = nearestWord(name, [...known]);
  const some = [...known].slice(0, 8).map(sayValue);
  const remedy = meant
    ? `Did you mean ${sayValue(meant)}?`
    : some.length === 0
      ? `Add the ${noun} to the document.`
      : `Add the ${noun}, or use one that is there, such as ${sayList(some, 'or')}.`;
  return [faultAt(path, `There is no ${noun} ${sayValue(name)}.`, remedy)];
}

/** The labels of a list; undefined where the list itself is missing, which is a fault of its own. */
function labelsOf(items?: readonly ({ readonly id?: string | undefined } | undefined)[]): Set<string> | undefined {
  return items && new Set(items.flatMap((item) => (item?.id === undefined ? [] : [item.id])));
}

function judgePairs(runs: readonly (Run | undefined)[]): Fault[] {
  const byId = new Map(runs.flatMap((run) => (run?.id === undefined ? [] : [[run.id, run] as const])));
  const known = new Set(byId.keys());
  return runs.flatMap((run, i) => {
    if (run?.pairedRun === undefined) return [];
    const path = ['runs', i, 'pairedRun'];
    return known.has(run.pairedRun) ? judgePair(run, path, byId) : judgeName('run', path, run.pairedRun, known);
  });
}

function judgePair(run: Run, path: readonly PathPart[], byId: ReadonlyMap<string, Run>): Fault[] {
  if (run.pairedRun === run.id) {
    return [faultAt(path, `Run ${sayValue(run.id)} is paired with itself.`, 'Name the run of the other side.')];
  }
  const back = byId.get(run.pairedRun ?? '')?.pairedRun;
  if (back === undefined || back === run.id) return [];
  const message = `Run ${sayValue(run.id)} is paired with ${sayValue(run.pairedRun)}, which is paired with ${sayValue(back)}.`;
  return [faultAt(path, message, 'A pair is two runs: let each name the other.')];
}
