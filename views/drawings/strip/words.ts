import type { ElbowHand, PlacedPiece, TeeHand } from '../../../src/domain/layout/result.ts';
import type { Crossing, RunFeed } from '../../../src/domain/model.ts';

/** The hand of a fitting as a fitter would say it. */
export function handWords(hand: ElbowHand | TeeHand): string {
  switch (hand) {
    case 'inside':
      return 'conductors inside the bend';
    case 'outside':
      return 'conductors outside the bend';
    case 'slot-inside':
      return 'slot inside the bend';
    case 'slot-outside':
      return 'slot outside the bend';
    case 'near-left':
      return 'branch on the conductor side, its conductors left';
    case 'near-right':
      return 'branch on the conductor side, its conductors right';
    case 'far-left':
      return 'branch on the far side, its conductors left';
    case 'far-right':
      return 'branch on the far side, its conductors right';
  }
}

export function pieceWord(kind: PlacedPiece['kind']): string {
  return kind === 'stock' ? 'section' : kind === 'cut' ? 'section, factory cut' : kind;
}

export function feedWords(feed: Pick<RunFeed, 'kind' | 'supply' | 'fromRun'>): string {
  const kind = feed.kind === 'tee' ? 'tee' : feed.kind === 'centre' ? 'centre feed' : 'end feed';
  const source = feed.fromRun ?? feed.supply;
  return source === null ? kind : `${kind} from ${source}`;
}

export function crossingWords(crossing: Pick<Crossing, 'kind' | 'fireRatingMin'>): string {
  const kind = crossing.kind === 'fire-wall' ? 'fire wall' : crossing.kind;
  return crossing.fireRatingMin > 0 ? `${kind}, ${crossing.fireRatingMin} min` : kind;
}
