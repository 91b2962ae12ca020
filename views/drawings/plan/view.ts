import type { Length } from '../../../src/domain/units/length.ts';
import { type Box, tenth } from '../scale.ts';
import { textWidth } from '../text-width.ts';
import { extentOf } from './extent.ts';
import { narrowestGap } from './gap.ts';
import type { FloorPlanProps, PlanRun, Window } from './props.ts';

export const LETTER = 11;
/** Width of a run as it is drawn where there is room; its true width would be a hair. */
const BAND = 8;
const LEAST_BAND = 2.4;
const LEAST_WIDTH = 480;
export const ROOM = { top: 34, side: 26, foot: 62 };

export interface View {
  readonly width: number;
  readonly height: number;
  /** Drawing units per unit of length. */
  readonly scale: number;
  readonly toX: (x: Length) => number;
  readonly toY: (y: Length) => number;
  /** Nothing of the building is drawn outside. */
  readonly frame: Box;
  /** Lettering may stand here. */
  readonly sheet: Box;
  /** How wide a run is drawn, and how far its arrows may reach: less where runs hang close together. */
  readonly band: number;
  readonly reach: number;
}

/** One scale for both directions, with room for the names of the runs. */
export function viewOf({ runs, width = 960, tallest = 720, window }: FloorPlanProps): View {
  const { left, right, low, high } = window ?? withOrigin(extentOf(runs));
  const names = Math.max(0, ...runs.map((run) => textWidth(run.id, LETTER))) + 14;
  const margin = ROOM.side + names;
  const tall = tallest - ROOM.top - ROOM.foot;
  const scale = Math.min((width - 2 * margin) / Math.max(right - left, 1), tall / Math.max(high - low, 1));
  const drawnWidth = Math.min(width, Math.ceil(Math.max((right - left) * scale + 2 * margin, LEAST_WIDTH)));
  const height = tenth((high - low) * scale + ROOM.top + ROOM.foot);
  const inner = window === undefined ? 0 : margin - 14;
  return {
    width: drawnWidth,
    height,
    scale,
    toX: (x) => margin + (x - left) * scale,
    toY: (y) => ROOM.top + (high - y) * scale,
    frame: {
      x: inner,
      y: 0,
      width: drawnWidth - 2 * inner,
      height: height - (window === undefined ? 0 : ROOM.foot - 34),
    },
    sheet: { x: 0, y: 0, width: drawnWidth, height },
    ...widthsAt(scale, runs),
  };
}

/** A part of the level at a given scale in a given frame of a sheet, the middle of one in the middle of the other. */
export function viewAt(window: Window, frame: Box, scale: number, runs: readonly PlanRun[]): View {
  const middleX = (window.left + window.right) / 2;
  const middleY = (window.low + window.high) / 2;
  return {
    width: frame.x + frame.width,
    height: frame.y + frame.height,
    scale,
    toX: (x) => frame.x + frame.width / 2 + (x - middleX) * scale,
    toY: (y) => frame.y + frame.height / 2 + (middleY - y) * scale,
    frame,
    sheet: { x: frame.x - 6, y: frame.y - 6, width: frame.width + 12, height: frame.height + 12 },
    ...widthsAt(scale, runs),
  };
}

function widthsAt(scale: number, runs: readonly PlanRun[]): Pick<View, 'band' | 'reach'> {
  const gap = narrowestGap(runs) * scale;
  const band = Math.max(LEAST_BAND, Math.min(BAND, tenth(gap * 0.4)));
  return { band, reach: Math.max(7, Math.min(22, gap - band - 2)) };
}

function withOrigin(extent: Window | null): Window {
  const { left, right, low, high } = extent ?? { left: 0, right: 1, low: 0, high: 1 };
  return { left: Math.min(0, left), right: Math.max(1, right), low: Math.min(0, low), high: Math.max(1, high) };
}
