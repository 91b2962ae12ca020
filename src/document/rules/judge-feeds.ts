import type { Fault, PathPart } from '../fault.ts';
import { type Salvaged, wasGiven } from '../parsing/salvaged.ts';
import { sayList, sayNumber, sayValue } from '../parsing/say.ts';
import type { JobDocument } from '../schema/document.ts';
import type { RunDocument } from '../schema/run.ts';
import { faultAt } from './fault-at.ts';
import { type NameJudge, nameJudge } from './judge-references.ts';
import { judgeInside } from './judge-runs.ts';
import { teeCircles } from './tee-circles.ts';

type Run = Salvaged<RunDocument>;

/** What a feed is judged by: the runs by label, the circles they form, and who says that a run is missing. */
interface Network {
  readonly byId: ReadonlyMap<string, Run>;
  readonly circles: ReadonlyMap<string, readonly string[]>;
  readonly judgeRun: NameJudge;
}

/** A branch knows its tee, a centre feed stands on its own run, and no run is fed from itself, however far round. */
export function judgeFeeds(document: Salvaged<JobDocument>): Fault[] {
  const runs = document.runs ?? [];
  const byId = new Map(runs.flatMap((run) => (run?.id === undefined ? [] : [[run.id, run] as const])));
  const network = { byId, circles: teeCircles(byId), judgeRun: nameJudge('run', new Set(byId.keys())) };
  return runs.flatMap((run, i) => (run?.feed ? judgeFeed(run, ['runs', i, 'feed'], network) : []));
}

function judgeFeed(run: Run, path: readonly PathPart[], network: Network): Fault[] {
  switch (run.feed?.kind) {
    case undefined:
      return [];
    case 'tee':
      return [...judgeTee(run, path), ...judgeParent(run, path, network)];
    case 'centre':
      return [...judgeNoParent(run, path), ...judgeInside(run, [...path, 'atMm'], 'The centre feed', run.feed.atMm)];
    case 'end':
      return [...judgeNoParent(run, path), ...judgeAtEnd(run, path)];
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

function judgeAtEnd({ feed }: Run, path: readonly PathPart[]): Fault[] {
  if (feed?.atMm === undefined || feed.atMm === 0) return [];
  const message = `A feed at the end stands at 0, but atMm is ${sayNumber(feed.atMm)}.`;
  return [
    faultAt([...path, 'atMm'], message, 'Write "centre" for the kind if it stands within the run, or take atMm out.'),
  ];
}

function judgeParent(run: Run, path: readonly PathPart[], { byId, circles, judgeRun }: Network): Fault[] {
  const fromRun = run.feed?.fromRun;
  if (fromRun === undefined) return [];
  const place = [...path, 'fromRun'];
  if (fromRun === run.id) {
    return [faultAt(place, `Run ${sayValue(run.id)} is fed from itself.`, 'Name the run that its tee stands in.')];
  }
  const parent = byId.get(fromRun);
  if (!parent) return judgeRun(place, fromRun);
  const circle = circles.get(run.id ?? '');
  if (circle) {
    const message = `Runs ${sayCircle(circle)} feed one another in a circle.`;
    return [faultAt(place, message, 'One of them must have its own feed.')];
  }
  return judgeInside(parent, [...path, 'atMm'], 'The tee', run.feed?.atMm);
}

function sayCircle(circle: readonly string[]): string {
  const some = circle.slice(0, 8).map((id) => sayValue(id));
  const more = circle.length - some.length;
  return sayList(more > 0 ? [...some, `${sayNumber(more)} more`] : some, 'and');
}
