import { type Box, tenth } from '../scale.ts';
import { textWidth } from '../text-width.ts';
import { isIn } from './clip.ts';
import { placeOnPath } from './path-parts.ts';
import type { PlanRun } from './props.ts';
import type { View } from './view.ts';

export const TAP_LETTER = 7.5;
/** A plan with more than this in view is read for its runs; the marks are on its parts. */
const MOST = 900;
const GAP = 7;

export interface TapMark {
  readonly x: number;
  readonly y: number;
  readonly text: string;
  /** Reads upwards, on runs that go east and west. */
  readonly upright: boolean;
  readonly box: Box;
}

/** Marks of tap-offs beside their ticks, on the side they face, where none lies on a run or on another mark. */
export function tapMarks(runs: readonly PlanRun[], view: View, taken: readonly Box[]): TapMark[] {
  const wanted = runs.flatMap((run) => wishesOf(run, view));
  if (wanted.length > MOST) return [];
  const boxes: Box[] = [...taken];
  return wanted.flatMap((mark) => {
    const { box } = mark;
    const { frame } = view;
    const inside = isIn([box.x, box.y], frame) && isIn([box.x + box.width, box.y + box.height], frame);
    if (!inside || boxes.some((other) => meet(other, box))) return [];
    boxes.push(box);
    return [mark];
  });
}

function wishesOf(run: PlanRun, view: View): TapMark[] {
  return (run.taps ?? []).flatMap((at, index): TapMark[] => {
    const text = run.tapMarks?.[index];
    const place = placeOnPath(run.path, at);
    if (text === undefined || place === null || place.heading === null) return [];
    const side = place.heading + (run.conductorSide === 'left' ? Math.PI / 2 : -Math.PI / 2);
    const away = view.band / 2 + GAP;
    const [x, y] = [view.toX(place.x) + Math.cos(side) * away, view.toY(place.y) - Math.sin(side) * away];
    if (!isIn([x, y], view.frame)) return [];
    const width = textWidth(text, TAP_LETTER);
    const upright = Math.abs(Math.sin(side)) > 0.7;
    if (upright) {
      const up = Math.sin(side) > 0;
      const box = { x: x - TAP_LETTER / 2 - 0.5, y: up ? y - width : y, width: TAP_LETTER + 1, height: width };
      return [{ x: tenth(x + TAP_LETTER * 0.36), y: tenth(up ? y : y + width), text, upright, box }];
    }
    const right = Math.cos(side) > 0;
    const box = { x: right ? x : x - width, y: y - TAP_LETTER / 2, width, height: TAP_LETTER };
    return [{ x: tenth(box.x), y: tenth(y + TAP_LETTER * 0.36), text, upright, box }];
  });
}

function meet(a: Box, b: Box): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}
