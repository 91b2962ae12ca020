import type { Fault, PathPart } from '../fault.ts';
import { type Salvaged, wasGiven } from '../parsing/salvaged.ts';
import { sayList, sayValue } from '../parsing/say.ts';
import type { JobDocument } from '../schema/document.ts';
import type { RunDocument } from '../schema/run.ts';
import { faultAt } from './fault-at.ts';
import { judgeName } from './judge-references.ts';
import { judgeInside } from './judge-runs.ts';

type Run = Salvaged<RunDocument>;
type ById = ReadonlyMap<string, Run>;

/** A branch knows its tee, a centre feed stands on its own run, and no run is fed from itself, however far round. */
export function judgeFeeds(document: Salvaged<JobDocument>): Fault[] {
  const runs = document.runs ?? [];
  const byId: ById = new Map(runs.flatMap((run) => (run?.id === undefined ? [] : [[run.id, run] as const])));
  return runs.flatMap((run, i) => (run?.feed ? judgeFeed(run, ['runs', i, 'feed'], byId) : []));
}

function judgeFeed(run: Run, path: readonly PathPart[], byId: ById): Fault[] {
  switch (run.feed?.kind) {
    case undefined:
      return [];
    case 'tee':
      return [...judgeTee(run, path), ...judgeParent(run, path, byId)];
    case 'centre':
      return [...judgeNoParent(run, path), ...judgeInside(run, [...path, 'atMm'], 'The centre feed', run.feed.atMm)];
    case 'end':
      return judgeNoParent(run, path);
  }
}

const TEE_KEYS = [
  ['fromRun', 'the run that the tee stands in'],
  ['atMm', 'the distance of its centre along that run, in mm'],
  ['branchSide', 'left or right, looking along that run'],
] as const;

function judgeTee({ feed }: Run, path: readonly PathPart[]): Fault[] {
  return TEE_KEYS.filter(([key]) => feed && !wasGiven(feed, key)).map(([key, what]) =>
    faultAt([...path, key], `A feed of kind tee has no ${key}.`, `Give ${key}: ${what}.`),
  );
}

function judgeNoParent({ feed }: Run, path: readonly PathPart[]): Fault[] {
  if (feed?.fromRun === undefined) return [];
  const message = `A feed of kind ${feed.kind} does not come from a run, but fromRun is ${sayValue(feed.fromRun)}.`;
  return [faultAt([...path, 'fromRun'], message, 'Write "tee" for the kind if this is a branch, or take fromRun out.')];
}

function judgeParent(run: Run, path: readonly PathPart[], byId: ById): Fault[] {
  const fromRun = run.feed?.fromRun;
  if (fromRun === undefined) return [];
  const place = [...path, 'fromRun'];
  if (fromRun === run.id) {
    return [faultAt(place, `Run ${sayValue(run.id)} is fed from itself.`, 'Name the run that its tee stands in.')];
  }
  const parent = byId.get(fromRun);
  if (!parent) return judgeName('run', place, fromRun, new Set(byId.keys()));
  const circle = circleThrough(run, byId);
  if (circle.length > 0) {
    const message = `Runs ${sayList(circle.map(sayValue), 'and')} feed one another in a circle.`;
    return [faultAt(place, message, 'One of them must have its own feed.')];
  }
  return judgeInside(parent, [...path, 'atMm'], 'The tee', run.feed?.atMm);
}

/** The runs of a circle of tees that comes back to `run`; empty when following the feeds ends or joins another circle. */
function circleThrough(run: Run, byId: ById): string[] {
  const way: string[] = [];
  const seen = new Set<string>();
  let at: Run | undefined = run;
  while (at?.id !== undefined && !seen.has(at.id)) {
    seen.add(at.id);
    way.push(at.id);
    at = at.feed?.kind === 'tee' ? byId.get(at.feed.fromRun ?? '') : undefined;
  }
  return at?.id !== undefined && at.id === run.id ? way : [];
}
