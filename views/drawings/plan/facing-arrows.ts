import type { Length } from '../../../src/domain/units/length.ts';
import type { Box } from '../scale.ts';
import { besides, stroke } from './besides.ts';
import { clipLine, isIn } from './clip.ts';
import { pathParts } from './path-parts.ts';
import type { PlanRun } from './props.ts';
import type { View } from './view.ts';

export interface FacingArrow {
  readonly d: string;
  readonly box: Box;
}

/** Arrows of runs that face each other stand beside one another. */
const ASIDE = 8;

/** One arrow about the middle of that part of each leg which is in view, the way that taps face. */
export function facingArrows(run: PlanRun, view: View): FacingArrow[] {
  const { band, reach } = view;
  const barb = Math.min(6, reach * 0.5);
  const aside = run.conductorSide === 'left' ? -ASIDE : ASIDE;
  return run.path.slice(1).flatMap((point, index) => {
    const at = middleInView(run, view, run.path[index]!.at, point.at);
    if (at === null) return [];
    const here = (away: number, along = 0) => besides(run, view, at, band / 2 + away, along + aside);
    const [foot, tip] = [here(Math.min(7, reach / 4)), here(reach)];
    if (foot === null || tip === null || !isIn(tip, view.frame)) return [];
    const d = stroke([foot, tip]) + stroke([here(reach - barb, -4), tip, here(reach - barb, 4)]);
    const [left, top] = [Math.min(foot[0], tip[0]) - 5, Math.min(foot[1], tip[1]) - 5];
    const box = { x: left, y: top, width: Math.abs(foot[0] - tip[0]) + 10, height: Math.abs(foot[1] - tip[1]) + 10 };
    return [{ d, box }];
  });
}

function middleInView(run: PlanRun, view: View, from: Length, to: Length): Length | null {
  const [part] = pathParts(run.path, from, to);
  if (part === undefined) return null;
  const start = [view.toX(part.from.x), view.toY(part.from.y)] as const;
  const end = [view.toX(part.to.x), view.toY(part.to.y)] as const;
  const line = clipLine(start, end, view.frame);
  const length = Math.hypot(end[0] - start[0], end[1] - start[1]);
  if (line === null || length === 0) return null;
  const middle = [(line[0][0] + line[1][0]) / 2, (line[0][1] + line[1][1]) / 2] as const;
  return from + ((to - from) * Math.hypot(middle[0] - start[0], middle[1] - start[1])) / length;
}
