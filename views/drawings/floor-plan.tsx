import type { JSX } from 'preact';
import { inksFor } from './ink.tsx';
import { Bar, North } from './plan/furniture.tsx';
import type { FloorPlanProps } from './plan/props.ts';
import { scaleBar } from './plan/scale-bar.ts';
import { Scene } from './plan/scene.tsx';
import { Under } from './plan/under.tsx';
import { viewOf } from './plan/view.ts';

export type { FloorPlanProps, PlanRun, Underlay, Window } from './plan/props.ts';

/** The plan of one level to scale, north up: runs in the ink of their pieces, tap-offs, and the way they face. */
export function FloorPlan(props: FloorPlanProps): JSX.Element {
  const { level, runs, units, ink, detailed, underlay } = props;
  const inks = inksFor(ink);
  const view = viewOf(props);
  const bar = scaleBar(180 / view.scale, units);
  const id = `plan-${level.replace(/[^A-Za-z0-9_-]/g, '_')}`;
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      class="plan"
      role={runs.some((run) => run.href !== undefined) ? 'group' : 'img'}
      aria-labelledby={`${id}-title`}
      viewBox={`0 0 ${view.width} ${view.height}`}
      width={view.width}
      height={view.height}
      font-family="Helvetica, Arial, sans-serif"
    >
      <title id={`${id}-title`}>{`Plan of ${level}, north up: ${runs.length} runs`}</title>
      {underlay !== undefined && <Under underlay={underlay} view={view} />}
      <Scene runs={runs} view={view} units={units} inks={inks} detailed={detailed} />
      <North x={view.width - 24} inks={inks} />
      <Bar length={bar.length * view.scale} text={bar.text} y={view.height - 12} inks={inks} />
    </svg>
  );
}
