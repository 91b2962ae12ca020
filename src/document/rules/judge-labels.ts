import { type Fault, formatPath, type PathPart } from '../fault.ts';
import type { Salvaged } from '../parsing/salvaged.ts';
import { sayNumber, sayValue } from '../parsing/say.ts';
import type { JobDocument } from '../schema/document.ts';
import { faultAt } from './fault-at.ts';

type Labelled = { readonly id?: string | undefined } | undefined;

/** Labels are keys: no two levels, types or runs share one, nor two taps of a run; and levels have one order. */
export function judgeLabels(document: Salvaged<JobDocument>): Fault[] {
  return [
    ...judgeUnique('level', ['levels'], document.levels),
    ...judgeUnique('busway type', ['buswayTypes'], document.buswayTypes),
    ...judgeUnique('run', ['runs'], document.runs),
    ...(document.runs ?? []).flatMap((run, i) => judgeUnique('tap', ['runs', i, 'taps'], run?.taps)),
    ...judgeOrder(document.levels ?? []),
  ];
}

function judgeUnique(noun: string, path: readonly PathPart[], items: readonly Labelled[] = []): Fault[] {
  const first = new Map<string, number>();
  const faults: Fault[] = [];
  items.forEach((item, i) => {
    const id = item?.id;
    if (id === undefined) return;
    const before = first.get(id);
    if (before === undefined) first.set(id, i);
    else faults.push(saysTwice(noun, path, id, before, i));
  });
  return faults;
}

function saysTwice(noun: string, path: readonly PathPart[], id: string, before: number, i: number): Fault {
  const message = `A second ${noun} is called ${sayValue(id)}; the first is ${formatPath([...path, before])}.`;
  return faultAt([...path, i, 'id'], message, 'Give this one another label, or take it out if it was pasted twice.');
}

function judgeOrder(levels: NonNullable<Salvaged<JobDocument>['levels']>): Fault[] {
  const first = new Map<number, string>();
  return levels.flatMap((level, i) => {
    if (level?.order === undefined) return [];
    const before = first.get(level.order);
    if (before === undefined) first.set(level.order, level.id ?? formatPath(['levels', i]));
    if (before === undefined) return [];
    const message = `Level ${sayValue(level.id ?? i + 1)} has order ${sayNumber(level.order)}, and so has level ${sayValue(before)}.`;
    return [faultAt(['levels', i, 'order'], message, 'Give each level its own place in the order of work.')];
  });
}
