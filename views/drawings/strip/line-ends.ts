import { isWithin } from './lines.ts';
import type { LineContent } from './wishes.ts';

export interface LineEnds {
  readonly feed: { readonly kind: 'end' | 'centre' | 'tee'; readonly x: number } | null;
  readonly capXs: readonly number[];
}

/** The feed stands before the first piece, or over the run where it is fed in its length; every open end has its cap. */
export function endsOf({ run, stretch, length, toX }: LineContent): LineEnds {
  const { kind, at } = run.feed;
  const first = stretch.from === 0;
  const lastCap = stretch.to === length ? [toX(length)] : [];
  if (kind !== 'centre') return { feed: first ? { kind, x: toX(0) - 22 } : null, capXs: lastCap };
  const centre = at ?? length / 2;
  const feed = isWithin(centre, stretch, length) ? { kind, x: toX(centre) } : null;
  return { feed, capXs: first ? [toX(0), ...lastCap] : lastCap };
}
