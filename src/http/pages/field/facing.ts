import { compassWord } from '../../../../views/drawings/compass.ts';
import { facingAt } from '../../../domain/layout/facing-at.ts';
import type { RunLayout } from '../../../domain/layout/result.ts';
import type { Length } from '../../../domain/units/length.ts';

type Laid = Pick<RunLayout, 'path' | 'facing'>;

/** "north": the way that tap-offs face at a place; null where they face up or down. */
export function facesAt(layout: Laid, at: Length): string | null {
  const facing = facingAt(layout, at);
  return facing === null ? null : compassWord(facing.compassDeg);
}

/** Where they would face with the piece the wrong way round. */
export function facesWrongAt(layout: Laid, at: Length): string | null {
  const facing = facingAt(layout, at);
  return facing === null ? null : compassWord(facing.compassDeg + 180);
}
