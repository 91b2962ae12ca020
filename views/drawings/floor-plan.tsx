import type { JSX } from 'preact';
import type { PathPoint } from '../../src/domain/layout/result.ts';
import type { Side, UnitSystem } from '../../src/domain/model.ts';
import type { PieceState } from '../../src/domain/quality/states.ts';
import type { Length } from '../../src/domain/units/length.ts';
import { InkedBox, type InkMode, type Inks, inksFor } from './ink.tsx';
import { pathParts, placeOnPath } from './plan/path-parts.ts';
import { type PlacedName, placeNames } from './plan/place-names.ts';
import { scaleBar } from './plan/scale-bar.ts';
import { tenth } from './scale.ts';
import { lookOf } from './states.ts';
import { textWidth } from './text-width.ts';

export interface PlanRun {
  readonly id: string;
  readonly conductorSide: Side;
  readonly path: readonly PathPoint[];
  /** As far as the record goes; without it the run is drawn as planned. */
  readonly pieces?: readonly { readonly from: Length; readonly to: Length; readonly state: PieceState }[];
  readonly taps?: readonly Length[];
  readonly href?: string;
}

export interface FloorPlanProps {
  readonly level: string;
  readonly runs: readonly PlanRun[];
  readonly units: UnitSystem;
  readonly ink: InkMode;
  readonly width?: number;
  /** The plan is made smaller rather than taller than this. */
  readonly tallest?: number;
}

const LETTER = 11;
const BAND = 8;
const ROOM = { top: 34, side: 26, foot: 62 };

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
        <LinkedRun key={run.id} run={run} view={view} name={names.find((name) => name.text === run.id)} inks={inks} />
      ))}
      <Bar length={bar.length * view.scale} text={bar.text} y={view.height - 12} inks={inks} />
    </svg>
  );
}

interface View {
  readonly width: number;
  readonly height: number;
  /** Drawing units per unit of length. */
  readonly scale: number;
  readonly toX: (x: Length) => number;
  readonly toY: (y: Length) => number;
}

function viewOf({ runs, width = 960, tallest = 640 }: FloorPlanProps): View {
  const points = runs.flatMap((run) => run.path);
  const left = Math.min(0, ...points.map((point) => point.x));
  const right = Math.max(1, ...points.map((point) => point.x));
  const low = Math.min(0, ...points.map((point) => point.y));
  const high = Math.max(1, ...points.map((point) => point.y));
  const names = Math.max(0, ...runs.map((run) => textWidth(run.id, LETTER))) + 14;
  const margin = ROOM.side + names;
  const scale = Math.min((width - 2 * margin) / (right - left), (tallest - ROOM.top - ROOM.foot) / (high - low));
  return {
    width,
    height: tenth((high - low) * scale + ROOM.top + ROOM.foot),
    scale,
    toX: (x) => margin + (x - left) * scale,
    toY: (y) => ROOM.top + (high - y) * scale,
  };
}

function nameOf(run: PlanRun, view: View) {
  const start = run.path[0]!;
  const next = run.path.find((point) => point.x !== start.x || point.y !== start.y) ?? start;
  const goesRight = next.x >= start.x ? ('yes' as const) : ('no' as const);
  return { text: run.id, x: view.toX(start.x), y: view.toY(start.y), goesRight };
}

interface RunProps {
  readonly run: PlanRun;
  readonly view: View;
  readonly name: PlacedName | undefined;
  readonly inks: Inks;
}

function LinkedRun(props: RunProps) {
  const { run, name, inks } = props;
  const content = (
    <>
      <title>{`Run ${run.id}`}</title>
      <Band {...props} />
      {name && <Name name={name} inks={inks} />}
    </>
  );
  if (run.href === undefined) return <g>{content}</g>;
  return (
    <a href={run.href} class="pick">
      {content}
    </a>
  );
}

function Band({ run, view, inks }: RunProps) {
  const end = run.path.at(-1)?.at ?? 0;
  const pieces = run.pieces ?? [{ from: 0, to: end, state: 'planned' as const }];
  return (
    <>
      {pieces.flatMap((piece) =>
        pathParts(run.path, piece.from, piece.to).map((part) => {
          const [x1, y1] = [view.toX(part.from.x), view.toY(part.from.y)];
          const [x2, y2] = [view.toX(part.to.x), view.toY(part.to.y)];
          const turn = (Math.atan2(y2 - y1, x2 - x1) * 180) / Math.PI;
          const box = { x: 0, y: -BAND / 2, width: Math.max(Math.hypot(x2 - x1, y2 - y1), BAND), height: BAND };
          return (
            <g key={`${x1} ${y1} ${x2}`} transform={`translate(${tenth(x1)} ${tenth(y1)}) rotate(${tenth(turn)})`}>
              <InkedBox box={box} ink={lookOf(piece.state).ink} inks={inks} />
            </g>
          );
        }),
      )}
      <path d={tapTicks(run, view)} stroke={inks.ink} stroke-width={1.2} fill="none" />
      <path d={facingArrows(run, view)} stroke={inks.ink} stroke-width={1.4} fill="none" />
      <FeedSign run={run} view={view} inks={inks} />
    </>
  );
}

/** A point beside the run, on the side that taps face; `along` moves it with the run's heading. */
function besides(run: PlanRun, view: View, at: Length, away: number, along = 0): [number, number] | null {
  const place = placeOnPath(run.path, at);
  if (place === null || place.heading === null) return null;
  const side = place.heading + (run.conductorSide === 'left' ? Math.PI / 2 : -Math.PI / 2);
  const x = view.toX(place.x) + Math.cos(side) * away + Math.cos(place.heading) * along;
  const y = view.toY(place.y) - Math.sin(side) * away - Math.sin(place.heading) * along;
  return [tenth(x), tenth(y)];
}

function tapTicks(run: PlanRun, view: View): string {
  return (run.taps ?? [])
    .map((at) => stroke([besides(run, view, at, BAND / 2), besides(run, view, at, BAND / 2 + 5)]))
    .join('');
}

/** One arrow in the middle of each leg. */
function facingArrows(run: PlanRun, view: View): string {
  return run.path
    .slice(1)
    .map((point, index) => {
      const at = (run.path[index]!.at + point.at) / 2;
      const tip = besides(run, view, at, BAND / 2 + 22);
      const barbs = [besides(run, view, at, BAND / 2 + 16, -4), tip, besides(run, view, at, BAND / 2 + 16, 4)];
      return stroke([besides(run, view, at, BAND / 2 + 7), tip]) + stroke(barbs);
    })
    .join('');
}

function stroke(points: readonly ([number, number] | null)[]): string {
  if (points.some((point) => point === null)) return '';
  return points.map((point, index) => `${index === 0 ? 'M' : 'L'}${point!.join(' ')}`).join('');
}

function FeedSign({ run, view, inks }: Omit<RunProps, 'name'>) {
  const start = run.path[0];
  if (start === undefined) return null;
  return <circle cx={tenth(view.toX(start.x))} cy={tenth(view.toY(start.y))} r={5.5} fill={inks.ink} />;
}

function Name({ name, inks }: { name: PlacedName; inks: Inks }) {
  const { box, moved } = name;
  const middle = box.y + box.height / 2;
  const edge = name.goesRight === 'yes' ? box.x + box.width + 2 : box.x - 2;
  return (
    <>
      {moved > 1 && (
        <path
          d={`M${tenth(edge)} ${tenth(middle)}L${tenth(name.x)} ${tenth(name.y)}`}
          stroke={inks.ink}
          stroke-width={0.6}
          fill="none"
        />
      )}
      <text x={tenth(box.x)} y={tenth(middle + LETTER * 0.35)} font-size={LETTER} font-weight="bold" fill={inks.ink}>
        {name.text}
      </text>
    </>
  );
}

function North({ x, inks }: { x: number; inks: Inks }) {
  return (
    <>
      <path d={`M${x} 30V6M${x - 5} 14L${x} 4L${x + 5} 14`} stroke={inks.ink} stroke-width={1.4} fill="none" />
      <text x={x - 10} y={14} font-size={LETTER} font-weight="bold" text-anchor="end" fill={inks.ink}>
        north
      </text>
    </>
  );
}

function Bar({ length, text, y, inks }: { length: number; text: string; y: number; inks: Inks }) {
  const half = tenth(length / 2);
  return (
    <>
      <rect x={ROOM.side} y={y - 6} width={half} height={6} fill={inks.ink} />
      <rect x={ROOM.side} y={y - 6} width={tenth(length)} height={6} fill="none" stroke={inks.ink} stroke-width={1} />
      <text x={tenth(ROOM.side + length + 8)} y={y + 1} font-size={LETTER} fill={inks.ink}>
        {text}
      </text>
    </>
  );
}
