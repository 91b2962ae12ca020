import type { RunFeed } from '../model.ts';
import { millisecondsBetween } from './instant.ts';
import { type ReportedActivity, type RunEnd, type SiteRecord, type Stamp, stampOf } from './record.ts';
import { type StandingRecord, standingRecords } from './standing-records.ts';

export interface EndState {
  readonly end: RunEnd;
  readonly closed: Stamp | null;
}

/** What belongs to a run as a whole: its open ends, its slot, and work that only a record can say is done. */
export interface RunCard {
  readonly records: readonly SiteRecord[];
  readonly ends: readonly EndState[];
  readonly slot: Stamp | null;
  /** Pieces of work reported done, by activity; an activity that nobody reported is absent, which is not nought. */
  readonly reported: ReadonlyMap<ReportedActivity, number | 'all'>;
}

/** The ends that need a cap: the far one, and of a centre-fed run also the near one. A tee's branch is fed at its near end. */
export function openEnds(feed: Pick<RunFeed, 'kind'>): readonly RunEnd[] {
  return feed.kind === 'centre' ? ['near', 'far'] : ['far'];
}

/**
 * Folds the records of one run in the order in which the work was done, since a telephone without signal hands them in late.
 * An end or a slot opened again counts as open until it is closed again.
 */
export function runCard(ends: readonly RunEnd[], records: readonly SiteRecord[]): RunCard {
  const empty: RunCard = { records, ends: ends.map((end) => ({ end, closed: null })), slot: null, reported: new Map() };
  const inOrder = [...standingRecords(records)].sort((a, b) => millisecondsBetween(b.at, a.at));
  return inOrder.reduce(apply, empty);
}

function apply(card: RunCard, record: StandingRecord): RunCard {
  const { body } = record;
  switch (body.kind) {
    case 'end-closed':
      return withEnd(card, body.end, stampOf(record));
    case 'end-opened':
      return withEnd(card, body.end, null);
    case 'slot-closed':
      return { ...card, slot: stampOf(record) };
    case 'slot-opened':
      return { ...card, slot: null };
    case 'activity-done':
      return { ...card, reported: withReport(card.reported, body.activity, body.quantity) };
    default:
      return card;
  }
}

function withEnd(card: RunCard, end: RunEnd, closed: Stamp | null): RunCard {
  return { ...card, ends: card.ends.map((state) => (state.end === end ? { end, closed } : state)) };
}

function withReport(
  reported: RunCard['reported'],
  activity: ReportedActivity,
  quantity: number | null,
): RunCard['reported'] {
  const before = reported.get(activity) ?? 0;
  const after = quantity === null || before === 'all' ? 'all' : before + quantity;
  return new Map(reported).set(activity, after);
}
