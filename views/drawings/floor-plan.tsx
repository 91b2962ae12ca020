import type { JSX } from 'preact';
import type { Length } from '../../src/domain/units/length.ts';
import { inksFor } from './ink.tsx';
import { Bar, North } from './plan/furniture.tsx';
import { type NamePlace, placeNames } from './plan/place-names.ts';
import { DrawnRun } from './plan/plan-run.tsx';
import type { FloorPlanProps, PlanRun } from './plan/props.ts';
import { scaleBar } from './plan/scale-bar.ts';
import { BAND, LETTER, type View, viewOf } from './plan/view.ts';
import type { Box } from './scale.ts';

export type { FloorPlanProps, PlanRun } from './plan/props.ts';

/** The plan of one level to scale, north up: runs in the ink of their pieces, tap-offs, and the way they face. */
export function FloorPlan(props: FloorPlanProps): JSX.Element {
  const { level, runs, units, ink } = props;
  const inks = inksFor(ink);
  const view = viewOf(props);
  const bar = scaleBar(180 / view.scale, units);
  const id = `plan-${level.replace(/[^A-Za-z0-9_-]/g, '_')}`;
  const drawn = runs.filter((run) => run.path.length > 1);
  const names = placeNames(
    drawn.map((run) => nameOf(run, view)),
    LETTER,
    drawn.flatMap((run) => bandsOf(run, view)),
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

function nameOf(run: PlanRun, view: View): NamePlace {
  const [start, end] = [run.path[0]!, run.path.at(-1)!];
  return { text: run.id, start: onSheet(start, view), end: onSheet(end, view) };
}

/** The room that the run itself takes, leg by leg. */
function bandsOf(run: PlanRun, view: View): Box[] {
  return run.path.slice(1).map((point, index) => {
    const [x1, y1] = onSheet(run.path[index]!, view);
    const [x2, y2] = onSheet(point, view);
    return {
      x: Math.min(x1, x2) - BAND / 2,
      y: Math.min(y1, y2) - BAND / 2,
      width: Math.abs(x2 - x1) + BAND,
      height: Math.abs(y2 - y1) + BAND,
    };
  });
}

function onSheet(point: { readonly x: Length; readonly y: Length }, view: View): readonly [number, number] {
  return [view.toX(point.x), view.toY(point.y)];
}
