import type { Length } from '../../../src/domain/units/length.ts';
import { tenth } from '../scale.ts';
import { isIn } from './clip.ts';
import { placeOnPath } from './path-parts.ts';
import type { PlanRun } from './props.ts';
import type { View } from './view.ts';

/** A point beside the run, on the side that taps face; `along` moves it with the run's heading. null out of view or on a vertical leg. */
export function besides(run: PlanRun, view: View, at: Length, away: number, along = 0): [number, number] | null {
  const place = placeOnPath(run.path, at);
  if (place === null || place.heading === null) return null;
  if (!isIn([view.toX(place.x), view.toY(place.y)], view.frame)) return null;
  const side = place.heading + (run.conductorSide === 'left' ? Math.PI / 2 : -Math.PI / 2);
  const x = view.toX(place.x) + Math.cos(side) * away + Math.cos(place.heading) * along;
  const y = view.toY(place.y) - Math.sin(side) * away - Math.sin(place.heading) * along;
  return [tenth(x), tenth(y)];
}

/** A line through these points; nothing where one of them is out of view. */
export function stroke(points: readonly ([number, number] | null)[]): string {
  if (points.some((point) => point === null)) return '';
  return points.map((point, index) => `${index === 0 ? 'M' : 'L'}${point!.join(' ')}`).join('');
}
