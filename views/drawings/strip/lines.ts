import type { Length } from '../../../src/domain/units/length.ts';

/** A stretch of the run that is drawn on one line of the sheet. */
export interface Stretch {
  readonly from: Length;
  readonly to: Length;
}

/** A break moves back to a joint when that costs no more than this part of the line. */
const GIVE = 0.45;

/**
 * Breaks a run over lines no longer than `most`, at a joint where one is near enough, else through a piece.
 * The stretches touch and cover the run. `breakLines(100, [40, 80], 50)` gives 0–40, 40–80, 80–100.
 */
export function breakLines(length: Length, joints: readonly Length[], most: Length): Stretch[] {
  const stretches: Stretch[] = [];
  let from = 0;
  while (length - from > most * 1.001) {
    const to = lastJointWithin(joints, from + most * (1 - GIVE), from + most) ?? from + most;
    stretches.push({ from, to });
    from = to;
  }
  stretches.push({ from, to: length });
  return stretches;
}

function lastJointWithin(joints: readonly Length[], least: Length, most: Length): Length | null {
  const near = joints.filter((at) => at >= least && at <= most);
  return near.length === 0 ? null : Math.max(...near);
}

export function overlaps(zone: Stretch, stretch: Stretch): boolean {
  return zone.from < stretch.to && zone.to > stretch.from;
}

/** A place at a break belongs to the line that begins there; the end of the run to its last line. */
export function isWithin(at: Length, stretch: Stretch, length: Length): boolean {
  return at >= stretch.from && (at < stretch.to || stretch.to === length);
}

/** The middle of that part of `span` that is on the line. */
export function middleOf(span: Stretch, stretch: Stretch): Length {
  return (Math.max(span.from, stretch.from) + Math.min(span.to, stretch.to)) / 2;
}

/** Lines of a drawing put together on sheets no taller than `height`; a line is never cut. */
export function packLines<Line extends { readonly height: number }>(lines: readonly Line[], height: number): Line[][] {
  const sheets: Line[][] = [[]];
  let used = 0;
  for (const line of lines) {
    if (used > 0 && used + line.height > height) {
      sheets.push([]);
      used = 0;
    }
    sheets.at(-1)!.push(line);
    used += line.height;
  }
  return sheets;
}
