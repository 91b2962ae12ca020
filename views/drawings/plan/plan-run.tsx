import type { JSX } from 'preact';
import { InkedBox, type Inks } from '../ink.tsx';
import { tenth } from '../scale.ts';
import { lookOf } from '../states.ts';
import { besides, stroke } from './besides.ts';
import { clipLine } from './clip.ts';
import { facingArrows } from './facing-arrows.ts';
import { pathParts } from './path-parts.ts';
import type { PlacedName } from './place-names.ts';
import { CrossingSigns, FeedSign } from './plan-signs.tsx';
import type { PlanRun } from './props.ts';
import { LETTER, type View } from './view.ts';

/** Narrower than this the two broken edges of a planned piece run into one: it is drawn as a broken line. */
const LEAST_OUTLINE = 5;

export interface RunProps {
  readonly run: PlanRun;
  readonly view: View;
  readonly name: PlacedName | undefined;
  readonly inks: Inks;
  /** Pieces in firm outline, whatever their state: a drawing to build from. */
  readonly allAlike?: boolean;
}

/** One run of the plan: its pieces in their ink, tap-offs, which way they face, walls, feed and name. */
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

function Band(props: RunProps) {
  const { run, view, inks, allAlike } = props;
  const end = run.path.at(-1)?.at ?? 0;
  const isLaid = run.pieces !== undefined && run.pieces.length > 0;
  const pieces = isLaid ? run.pieces : [{ from: 0, to: end, state: 'planned' as const }];
  return (
    <>
      {pieces.flatMap((piece) =>
        pathParts(run.path, piece.from, piece.to).flatMap(({ from, to }) => {
          const line = clipLine([view.toX(from.x), view.toY(from.y)], [view.toX(to.x), view.toY(to.y)], view.frame);
          if (line === null) return [];
          const [[x1, y1], [x2, y2]] = line;
          const turn = (Math.atan2(y2 - y1, x2 - x1) * 180) / Math.PI;
          const { band } = view;
          const box = { x: 0, y: -band / 2, width: Math.max(Math.hypot(x2 - x1, y2 - y1), band), height: band };
          const ink = allAlike && isLaid ? 'thin' : lookOf(piece.state).ink;
          return (
            <g key={`${x1} ${y1} ${x2}`} transform={`translate(${tenth(x1)} ${tenth(y1)}) rotate(${tenth(turn)})`}>
              {ink === 'dashed' && band < LEAST_OUTLINE ? (
                <path
                  d={`M0 0H${tenth(box.width)}`}
                  stroke={inks.ink}
                  stroke-width={1.2}
                  stroke-dasharray="4 3"
                  fill="none"
                />
              ) : (
                <InkedBox box={box} ink={ink} inks={inks} />
              )}
            </g>
          );
        }),
      )}
      {/* A line without a course is left out: an empty attribute would be written without its value, which no XML takes. */}
      <path d={tapTicks(run, view) || undefined} stroke={inks.ink} stroke-width={1.2} fill="none" />
      <path
        d={
          facingArrows(run, view)
            .map(({ d }) => d)
            .join('') || undefined
        }
        stroke={inks.ink}
        stroke-width={1.4}
        fill="none"
      />
      <CrossingSigns run={run} view={view} inks={inks} />
      <FeedSign run={run} view={view} inks={inks} />
    </>
  );
}

function tapTicks(run: PlanRun, view: View): string {
  const { band } = view;
  return (run.taps ?? [])
    .map((at) => stroke([besides(run, view, at, band / 2), besides(run, view, at, band / 2 + 5)]))
    .join('');
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
      <rect
        x={tenth(box.x - 1)}
        y={tenth(box.y)}
        width={tenth(box.width + 2)}
        height={tenth(box.height)}
        fill={inks.ground}
      />
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
