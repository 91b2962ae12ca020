import type { Length } from '../../../src/domain/units/length.ts';
import type { Box } from '../scale.ts';
import { isWithin, overlaps, type Stretch } from './lines.ts';
import { BODY, CLAMP, CLIP, TAP } from './metrics.ts';
import type { Thing } from './things.ts';
import type { LineContent } from './wishes.ts';

/** Heights of one line of the strip. */
export interface Levels {
  readonly structureY: number;
  readonly bodyY: number;
  readonly tapsAbove: boolean;
}

export interface DrawnThing {
  readonly thing: Thing;
  readonly box: Box;
}

/** A joint at a break shows on both lines; a hanger or a tap-off on one. */
export function isOnLine(thing: Thing, stretch: Stretch, length: Length): boolean {
  if (thing.kind === 'piece') return overlaps(thing, stretch);
  if (thing.kind === 'joint') return thing.from >= stretch.from && thing.from <= stretch.to;
  return isWithin(thing.from, stretch, length);
}

/** Whether a break at this distance runs through a piece. */
export function cutsPiece(things: readonly Thing[], at: Length): boolean {
  return things.some((thing) => thing.kind === 'piece' && thing.from < at && thing.to > at);
}

/**
 * Where a thing is drawn: pieces on the run, joints round it, tap-offs on the side they face. A hanger's mark stands at the
 * structure, where no tap-off can cover it.
 */
export function boxOf(thing: Thing, { stretch, toX }: LineContent, levels: Levels): Box {
  const { structureY, bodyY, tapsAbove } = levels;
  const x = toX(thing.from);
  switch (thing.kind) {
    case 'piece': {
      const left = toX(Math.max(thing.from, stretch.from)) + 0.8;
      return { x: left, y: bodyY, width: toX(Math.min(thing.to, stretch.to)) - 0.8 - left, height: BODY };
    }
    case 'joint':
      return { x: x - CLAMP.width / 2, y: bodyY - CLAMP.reach, width: CLAMP.width, height: BODY + 2 * CLAMP.reach };
    case 'support':
      return { ...CLIP, x: x - CLIP.width / 2, y: structureY };
    case 'tap':
      return { ...TAP, x: x - TAP.width / 2, y: tapsAbove ? bodyY - TAP.height : bodyY + BODY };
  }
}
