import type { RunDocument } from '../schema/run.ts';
import { type Shift, tidyMm } from './shifted-run.ts';

/** A line in plan through a point, along a heading in the document's convention (0 = +x, 90 = +y). */
export interface MirrorLine extends Shift {
  readonly deg: number;
}

type Side = 'left' | 'right';

/**
 * The mirror image of a run over a line in plan: left turns turn right, left conductors lie right, and so do branches and
 * the side that taps must face; up and down stay, and so does every distance along the run. An elbow that turns towards
 * the conductors still does: its kind stays, and the hands of tees change sides. Mirrored twice it is the same run.
 */
export function mirroredRun(run: RunDocument, line: MirrorLine): RunDocument {
  const start = run.start ?? (run.feed.kind === 'tee' ? undefined : { xMm: 0, yMm: 0, zMm: 0 });
  return {
    ...run,
    ...(start === undefined ? {} : { start: { ...start, ...mirroredPoint(start, line) } }),
    ...(run.feed.kind === 'tee' && run.headingDeg === undefined
      ? {}
      : { headingDeg: mirroredHeading(run.headingDeg ?? 0, line.deg) }),
    conductorSide: opposite(run.conductorSide),
    feed: run.feed.branchSide === undefined ? run.feed : { ...run.feed, branchSide: opposite(run.feed.branchSide) },
    legs: run.legs.map((leg) => ({
      ...leg,
      turn: leg.turn === 'left' || leg.turn === 'right' ? opposite(leg.turn) : leg.turn,
      ...(leg.tapsMustFace === undefined ? {} : { tapsMustFace: opposite(leg.tapsMustFace) }),
    })),
    ...(run.taps === undefined
      ? {}
      : {
          taps: run.taps.map((tap) => (tap.near === undefined ? tap : { ...tap, near: mirroredPoint(tap.near, line) })),
        }),
  };
}

/**
 * The same course with the conductors on its other side: turns stay, so an inside elbow becomes an outside one, a near tee
 * a far one, and taps face the other way. Turned over twice it is the same run.
 */
export function turnedOver(run: RunDocument): RunDocument {
  return {
    ...run,
    conductorSide: opposite(run.conductorSide),
    legs: run.legs.map((leg) =>
      leg.tapsMustFace === undefined ? leg : { ...leg, tapsMustFace: opposite(leg.tapsMustFace) },
    ),
  };
}

export function opposite(side: Side): Side {
  return side === 'left' ? 'right' : 'left';
}

/** Reflected over the line; along x or y without any rounding. */
function mirroredPoint({ xMm, yMm }: Shift, line: MirrorLine): Shift {
  const quarter = ((line.deg % 180) + 180) % 180;
  if (quarter === 0) return { xMm, yMm: tidyMm(2 * line.yMm - yMm) };
  if (quarter === 90) return { xMm: tidyMm(2 * line.xMm - xMm), yMm };
  const twice = (2 * line.deg * Math.PI) / 180;
  const [dx, dy] = [xMm - line.xMm, yMm - line.yMm];
  return {
    xMm: tidyMm(line.xMm + dx * Math.cos(twice) + dy * Math.sin(twice)),
    yMm: tidyMm(line.yMm + dx * Math.sin(twice) - dy * Math.cos(twice)),
  };
}

/** Kept within one turn either way, as the document writes headings. */
function mirroredHeading(heading: number, lineDeg: number): number {
  const mirrored = tidyDeg(2 * lineDeg - heading);
  return Math.abs(mirrored) <= 360 ? mirrored : mirrored % 360;
}

function tidyDeg(degrees: number): number {
  return Math.round(degrees * 1e9) / 1e9 + 0;
}
