import { FOOT, type Length, METRE } from '../../../src/domain/units/length.ts';
import { facingSpans } from './facing-spans.ts';
import { breakLines } from './lines.ts';
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
 * the marks are too dense to be read. It never shrinks the lettering.
 */
export function planStrip(props: StripProps): StripPlan {
  const width = props.width ?? DEFAULT_WIDTH;
  let most = ((props.units === 'ft-in' ? 40 * FOOT : 12 * METRE) * (width - MARGIN.left - MARGIN.right)) / 836;
  let plan = planWith(props, width, most);
  for (let attempt = 0; attempt < TRIES && crowded(plan); attempt++) {
    most *= SHORTEN;
    plan = planWith(props, width, most);
  }
  return plan;
}

function planWith(props: StripProps, width: number, most: Length): StripPlan {
  const { layout, run, units } = props;
  const things = thingsOf(props);
  const facing = facingSpans(layout, run.legs);
  const joints = layout.joints.map((joint) => joint.at);
  const stretches = breakLines(layout.length, joints, most);
  const longest = Math.max(...stretches.map((stretch) => stretch.to - stretch.from));
  const scale = (width - MARGIN.left - MARGIN.right) / Math.max(longest, most / 2);
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

function crowded(plan: StripPlan): boolean {
  return plan.lines.some((line) => line.overflow > 0 || line.farthestLabel > FARTHEST_LABEL);
}
