import type { Fault, PathPart } from '../fault.ts';
import { type Salvaged, wasGiven } from '../parsing/salvaged.ts';
import { sayValue } from '../parsing/say.ts';
import type { JobDocument } from '../schema/document.ts';
import type { TapDocument } from '../schema/tap.ts';
import { faultAt } from './fault-at.ts';

type Tap = Salvaged<TapDocument>;

/** Each tap has one place and one load. */
export function judgeTaps(document: Salvaged<JobDocument>): Fault[] {
  return (document.runs ?? []).flatMap((run, i) =>
    (run?.taps ?? []).flatMap((tap, j) => (tap ? judgeTap(tap, ['runs', i, 'taps', j]) : [])),
  );
}

function judgeTap(tap: Tap, path: readonly PathPart[]): Fault[] {
  return [
    ...judgeOneOf(tap, path, 'atMm', 'near', 'its distance along the run, or the plan position of what it serves'),
    ...judgeOneOf(tap, path, 'loadVA', 'loadA', 'the load in VA, or in amperes'),
  ];
}

function judgeOneOf(tap: Tap, path: readonly PathPart[], one: keyof Tap, other: keyof Tap, what: string): Fault[] {
  const given = [one, other].filter((key) => wasGiven(tap, key));
  if (given.length === 1) return [];
  const name = `Tap ${sayValue(tap.id ?? '')}`;
  if (given.length === 0) return [faultAt([...path, one], `${name} has neither ${one} nor ${other}.`, `Give ${what}.`)];
  return [faultAt([...path, other], `${name} has both ${one} and ${other}.`, `Keep one: ${what}.`)];
}
