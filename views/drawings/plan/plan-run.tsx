import type { JSX } from 'preact';
import type { Length } from '../../../src/domain/units/length.ts';
import { InkedBox, type Inks } from '../ink.tsx';
import { tenth } from '../scale.ts';
import { lookOf } from '../states.ts';
import { pathParts, placeOnPath } from './path-parts.ts';
import type { PlacedName } from './place-names.ts';
import type { PlanRun } from './props.ts';
import { BAND, LETTER, type View } from './view.ts';

interface RunProps {
  readonly run: PlanRun;
  readonly view: View;
  readonly name: PlacedName | undefined;
  readonly inks: Inks;
}

/** One run of the plan: its pieces in their ink, tap-offs, which way they face, feed and name. */
export function DrawnRun(props: RunProps): JSX.Element {
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
  return <circle cx={tenth(view.toX(start.x))} cy={tenth(view.toY(start.y))} r={4.5} fill={inks.ink} />;
}

function Name({ name: { text, box, leader }, inks }: { name: PlacedName; inks: Inks }) {
  const [from, to] = leader ?? [];
  return (
    <>
      {from && to && (
        <path
          d={`M${tenth(from[0])} ${tenth(from[1])}L${tenth(to[0])} ${tenth(to[1])}`}
          stroke={inks.ink}
          stroke-width={0.6}
          fill="none"
        />
      )}
      <text
        x={tenth(box.x)}
        y={tenth(box.y + box.height / 2 + LETTER * 0.35)}
        font-size={LETTER}
        font-weight="bold"
        fill={inks.ink}
      >
        {text}
      </text>
    </>
  );
}
