import { fitText } from '../fit-text.ts';
import { overflow, placeLabels } from '../label-lane.ts';
import { textWidth } from '../text-width.ts';
import { FAN, LANE_ROWS, LETTER, ROW } from './metrics.ts';
import type { Wish } from './wishes.ts';

export interface DrawnLabel extends Wish {
  /** Middle of the text, on its baseline. */
  readonly y: number;
  readonly width: number;
  /** From the thing to the label; null when the label stands right beside it. */
  readonly leader: readonly (readonly [number, number])[] | null;
}

export interface FilledLane {
  readonly rows: number;
  readonly overflow: number;
  /** How far the worst label stands from its own place: 0 while it is above or below it. */
  readonly farthest: number;
  /** `near` is the edge of the lane on the side of the drawing; rows grow `away` from it, up (-1) or down (1). */
  readonly draw: (near: number, away: -1 | 1) => DrawnLabel[];
}

/** What people wrote at length stands whole in the tables beside the drawing. */
const LONGEST = 240;

/** Finds a place for every label of one lane of the line. */
export function fillLane(asked: readonly Wish[], width: number, obstacles: readonly number[]): FilledLane {
  const wishes = asked.map((wish) => ({ ...wish, text: fitText(wish.text, LONGEST, LETTER).text }));
  const labels = wishes.map((wish) => ({ x: wish.x, width: textWidth(wish.text, LETTER) }));
  const lane = { from: 3, to: width - 3, obstacles, rows: LANE_ROWS };
  const placed = placeLabels(labels, lane);
  const strayed = placed.map((place, i) => Math.abs(place.labelX - labels[i]!.x) - labels[i]!.width / 2);
  return {
    rows: Math.max(0, ...placed.map((place) => place.row + 1)),
    overflow: overflow(labels, placed, lane),
    farthest: Math.max(0, ...strayed),
    draw: (near, away) =>
      wishes.map((wish, i) => {
        const { labelX, row } = placed[i]!;
        const edge = near + away * (FAN + row * ROW);
        const beside = row === 0 && Math.abs(labelX - wish.x) <= 1;
        const leader = [
          [wish.x, near],
          [labelX, near + away * (FAN - 2)],
          [labelX, edge],
        ] as const;
        return {
          ...wish,
          x: labelX,
          y: away === 1 ? edge + LETTER * 0.8 : edge - 2,
          width: labels[i]!.width,
          leader: beside ? null : leader,
        };
      }),
  };
}
