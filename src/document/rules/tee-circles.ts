import type { Salvaged } from '../parsing/salvaged.ts';
import type { RunDocument } from '../schema/run.ts';

type Run = Salvaged<RunDocument>;

/**
 * The circles in which runs are fed from one another by tees, under the label of each run that is in one. A run has one
 * feed, so following the feeds from each run once finds them all.
 */
export function teeCircles(byId: ReadonlyMap<string, Run>): Map<string, readonly string[]> {
  const settled = new Set<string>();
  const circles = new Map<string, readonly string[]>();
  for (const start of byId.keys()) {
    const way = wayFrom(start, byId, settled);
    const back = parentOf(way.at(-1), byId);
    const from = back === undefined || settled.has(back) ? -1 : way.indexOf(back);
    const circle = from < 0 ? [] : way.slice(from);
    for (const id of circle) circles.set(id, circle);
    for (const id of way) settled.add(id);
  }
  return circles;
}

/** The runs from one to its source, up to one that was seen before. */
function wayFrom(start: string, byId: ReadonlyMap<string, Run>, settled: ReadonlySet<string>): string[] {
  const way = new Set<string>();
  let at: string | undefined = start;
  while (at !== undefined && !settled.has(at) && !way.has(at)) {
    way.add(at);
    at = parentOf(at, byId);
  }
  return [...way];
}

function parentOf(id: string | undefined, byId: ReadonlyMap<string, Run>): string | undefined {
  const feed = id === undefined ? undefined : byId.get(id)?.feed;
  const fromRun = feed?.kind === 'tee' ? feed.fromRun : undefined;
  return fromRun !== undefined && byId.has(fromRun) ? fromRun : undefined;
}
