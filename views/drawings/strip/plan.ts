import { FOOT, type Length, METRE } from '../../../src/domain/units/length.ts';
import { facingSpans } from './facing-spans.ts';
import { breakLines, type Stretch } from './lines.ts';
import { MARGIN } from './metrics.ts';
import { type LinePlan, type LineRequest, planLine } from './plan-line.ts';
import type { StripProps } from './props.ts';
import { thingsOf } from './things.ts';

export interface StripPlan {
  readonly width: number;
  /** Drawing units per unit of length: the same on every line, so that lines can be compared. */
  readonly scale: number;
  readonly lines: readonly LinePlan[];
}

const DEFAULT_WIDTH = 960;
/** A label that stands farther than this from its place is read against the wrong one. */
const FARTHEST_LABEL = 70;
const SHORTEN = 0.82;
const TRIES = 14;

/**
 * Lays the strip out: as few lines as the width allows at 40 ft (12 m) a line, and shorter lines at a larger scale where
 * the marks are too dense to be read. It never shrinks the lettering. At a stated scale the lines are as long as they may be.
 */
export function planStrip(props: StripProps): StripPlan {
  const width = props.width ?? DEFAULT_WIDTH;
  if (props.scale !== undefined) return planAtScale(props, width, props.scale);
  let most = ((props.units === 'ft-in' ? 40 * FOOT : 12 * METRE) * (width - MARGIN.left - MARGIN.right)) / 836;
  let plan = planWith(props, width, most);
  for (let attempt = 0; attempt < TRIES && crowded(plan); attempt++) {
    most *= SHORTEN;
    plan = planWith(props, width, most);
  }
  return plan;
}

function planAtScale(props: StripProps, width: number, scale: number): StripPlan {
  return planLines(props, width, scale, breakRun(props, Math.floor((width - MARGIN.left - MARGIN.right) / scale)));
}

function planWith(props: StripProps, width: number, most: Length): StripPlan {
  const stretches = breakRun(props, most);
  const longest = Math.max(...stretches.map((stretch) => stretch.to - stretch.from));
  const scale = (width - MARGIN.left - MARGIN.right) / Math.max(longest, most / 2);
  return planLines(props, width, scale, stretches);
}

function breakRun({ layout }: StripProps, most: Length): Stretch[] {
  return breakLines(
    layout.length,
    layout.joints.map((joint) => joint.at),
    most,
  );
}

function planLines(props: StripProps, width: number, scale: number, stretches: readonly Stretch[]): StripPlan {
  const { layout, run, units } = props;
  const things = thingsOf(props);
  const facing = facingSpans(layout, run.legs);
  const requests: LineRequest[] = stretches.map((stretch, index) => ({
    stretch,
    scale,
    width,
    things,
    facing,
    run,
    units,
    length: layout.length,
    heading: stretches.length > 1 ? `line ${index + 1} of ${stretches.length}` : '',
  }));
  return { width, scale, lines: requests.map(planLine) };
}

/** Labels stand so far from their places, or past the ends of a line, that they would be read wrongly. */
export function crowded(plan: StripPlan): boolean {
  return plan.lines.some((line) => line.overflow > 0 || line.farthestLabel > FARTHEST_LABEL);
}

/** Labels run past the ends of a line, or a line is taller than a sheet: not to be printed at this scale. */
export function outgrown(plan: StripPlan, height: number): boolean {
  return plan.lines.some((line) => line.overflow > 0 || line.height > height);
}

/** How far the worst label stands from its place, or past the end of its line, which is ten times as bad. */
export function strayOf(plan: StripPlan): number {
  return Math.max(...plan.lines.map((line) => line.farthestLabel + 10 * line.overflow));
}

/** Labels stand so far from their places that a larger scale has to be chosen. */
export function scattered(plan: StripPlan): boolean {
  return plan.lines.some((line) => line.farthestLabel > 2 * FARTHEST_LABEL);
}
