import type { JSX } from 'preact';
import { inksFor } from './ink.tsx';
import { Bar, North } from './plan/furniture.tsx';
import { placeNames } from './plan/place-names.ts';
import { DrawnRun } from './plan/plan-run.tsx';
import type { FloorPlanProps, PlanRun } from './plan/props.ts';
import { scaleBar } from './plan/scale-bar.ts';
import { LETTER, type View, viewOf } from './plan/view.ts';

export type { FloorPlanProps, PlanRun } from './plan/props.ts';

/** The plan of one level to scale, north up: runs in the ink of their pieces, tap-offs, and the way they face. */
export function FloorPlan(props: FloorPlanProps): JSX.Element {
  const { level, runs, units, ink } = props;
  const inks = inksFor(ink);
  const view = viewOf(props);
  const bar = scaleBar(180 / view.scale, units);
  const id = `plan-${level.replace(/[^A-Za-z0-9_-]/g, '_')}`;
  const names = placeNames(
    runs.filter((run) => run.path.length > 1).map((run) => nameOf(run, view)),
    LETTER,
  );
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
      <North x={view.width - 24} inks={inks} />
      {runs.map((run) => (
        <DrawnRun key={run.id} run={run} view={view} name={names.find((name) => name.text === run.id)} inks={inks} />
      ))}
      <Bar length={bar.length * view.scale} text={bar.text} y={view.height - 12} inks={inks} />
    </svg>
  );
}

function nameOf(run: PlanRun, view: View) {
  const start = run.path[0]!;
  const next = run.path.find((point) => point.x !== start.x || point.y !== start.y) ?? start;
  const goesRight = next.x >= start.x ? ('yes' as const) : ('no' as const);
  return { text: run.id, x: view.toX(start.x), y: view.toY(start.y), goesRight };
}
