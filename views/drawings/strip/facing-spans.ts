import type { RunLayout } from '../../../src/domain/layout/result.ts';
import type { Leg } from '../../../src/domain/model.ts';
import type { Length } from '../../../src/domain/units/length.ts';
import { compassWord } from '../compass.ts';

/** From this distance on, taps face this way. */
export interface FacingSpan {
  readonly from: Length;
  readonly word: string;
}

/** Where the facing changes along the run: at the elbow of each leg that turns. Legs that run straight on are joined. */
export function facingSpans(layout: RunLayout, legs: readonly Pick<Leg, 'turn'>[]): FacingSpan[] {
  const elbows = layout.pieces.filter((piece) => piece.kind === 'elbow');
  const spans: FacingSpan[] = [];
  let from: Length | undefined = 0;
  let elbow = 0;
  layout.facing.forEach((facing, index) => {
    const word = compassWord(facing.compassDeg);
    if (from !== undefined && spans.at(-1)?.word !== word) spans.push({ from, word });
    if (legs[index] && legs[index].turn !== 'none') from = elbows[elbow++]?.to;
  });
  return spans;
}

export function facingAt(spans: readonly FacingSpan[], at: Length): string | null {
  return spans.findLast((span) => span.from <= at)?.word ?? null;
}
