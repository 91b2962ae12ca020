import { withQuery } from '../pager.ts';

/** A line of takeoff or order, without what it was added up from. */
export interface LineKey {
  readonly item: string;
  readonly kind: string | null;
  readonly hand: string | null;
  readonly length: number | null;
  readonly type: string | null;
  readonly level: string | null;
  readonly run?: string | null;
}

/** Where the places of a line stand in pages; `level` narrows a line that was added up over the job. */
export function placesHref(jobId: string, of: 'takeoff' | 'order', line: LineKey, level?: string): string {
  return withQuery(`/jobs/${jobId}/takeoff/places`, {
    of,
    item: line.item,
    kind: line.kind ?? '',
    hand: line.hand ?? '',
    length: line.length === null ? '' : String(line.length),
    type: line.type ?? '',
    level: level ?? line.level ?? '',
    run: line.run ?? '',
  });
}
