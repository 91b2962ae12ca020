import type { JointCard } from './joint-card.ts';

/** Joints accepted without ever being reopened, of all joints accepted; null before the first, which is not nought. */
export interface FirstPassYield {
  readonly firstTime: number;
  readonly accepted: number;
  readonly percent: number | null;
}

/** First-pass yield of the joints made. Eleven of twelve are 91.7 %. */
export function firstPassYield(cards: readonly Pick<JointCard, 'accepted' | 'reopenings'>[]): FirstPassYield {
  const made = cards.filter(({ accepted }) => accepted !== null);
  const firstTime = made.filter(({ reopenings }) => reopenings.length === 0).length;
  return { firstTime, accepted: made.length, percent: made.length === 0 ? null : (100 * firstTime) / made.length };
}
