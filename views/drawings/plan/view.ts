import type { Length } from '../../../src/domain/units/length.ts';
import { tenth } from '../scale.ts';
import { textWidth } from '../text-width.ts';
import type { FloorPlanProps } from './props.ts';

export const LETTER = 11;
/** Width of a run as it is drawn; its true width would be a hair. */
export const BAND = 8;
const LEAST_WIDTH = 480;
export const ROOM = { top: 34, side: 26, foot: 62 };

export interface View {
  readonly width: number;
  readonly height: number;
  /** Drawing units per unit of length. */
  readonly scale: number;
  readonly toX: (x: Length) => number;
  readonly toY: (y: Length) => number;
}

/** One scale for both directions, with room for the names of the runs. */
export function viewOf({ runs, width = 960, tallest = 720 }: FloorPlanProps): View {
  const points = runs.flatMap((run) => run.path);
  const left = Math.min(0, ...points.map((point) => point.x));
  const right = Math.max(1, ...points.map((point) => point.x));
  const low = Math.min(0, ...points.map((point) => point.y));
  const high = Math.max(1, ...points.map((point) => point.y));
  const names = Math.max(0, ...runs.map((run) => textWidth(run.id, LETTER))) + 14;
  const margin = ROOM.side + names;
  const scale = Math.min((width - 2 * margin) / (right - left), (tallest - ROOM.top - ROOM.foot) / (high - low));
  const drawnWidth = (right - left) * scale + 2 * margin;
  return {
    width: Math.min(width, Math.ceil(Math.max(drawnWidth, LEAST_WIDTH))),
    height: tenth((high - low) * scale + ROOM.top + ROOM.foot),
    scale,
    toX: (x) => margin + (x - left) * scale,
    toY: (y) => ROOM.top + (high - y) * scale,
  };
}
