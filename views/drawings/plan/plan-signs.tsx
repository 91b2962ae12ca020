import type { JSX } from 'preact';
import { hatch, type Inks } from '../ink.tsx';
import { tenth } from '../scale.ts';
import { isIn } from './clip.ts';
import { placeOnPath } from './path-parts.ts';
import type { PlanRun } from './props.ts';
import type { View } from './view.ts';

interface SignProps {
  readonly run: PlanRun;
  readonly view: View;
  readonly inks: Inks;
}

/** Filled: an end feed. Open: a tee's branch point. Filled square: a centre feed. */
export function FeedSign({ run, view, inks }: SignProps): JSX.Element | null {
  const { kind, at } = run.feed ?? { kind: 'end', at: null };
  const length = run.path.at(-1)?.at ?? 0;
  const place = kind === 'centre' ? placeOnPath(run.path, at ?? length / 2) : run.path[0];
  if (place === undefined || place === null) return null;
  const [x, y] = [view.toX(place.x), view.toY(place.y)];
  if (!isIn([x, y], view.frame)) return null;
  const size = Math.max(2.6, Math.min(4.5, view.band * 0.6));
  if (kind === 'centre')
    return <rect x={tenth(x - size)} y={tenth(y - size)} width={2 * size} height={2 * size} fill={inks.ink} />;
  const open = kind === 'tee';
  return (
    <circle
      cx={tenth(x)}
      cy={tenth(y)}
      r={size}
      fill={open ? inks.ground : inks.ink}
      stroke={inks.ink}
      stroke-width={open ? 1.6 : 0}
    />
  );
}

/** Walls and floors across the run: hatched to scale, crosswise where they hold back fire. */
export function CrossingSigns({ run, view, inks }: SignProps): JSX.Element {
  const { band } = view;
  const tall = band + 18;
  return (
    <>
      {(run.crossings ?? []).map((crossing) => {
        const place = placeOnPath(run.path, crossing.at);
        if (place === null) return null;
        const [x, y] = [view.toX(place.x), view.toY(place.y)];
        if (!isIn([x, y], view.frame)) return null;
        const thick = Math.max(3, crossing.thickness * view.scale);
        const ends = [-tall / 2, band / 2 + 1].map((top) => ({ x: -thick / 2, y: top, width: thick, height: 8 }));
        const direction = crossing.kind === 'fire-wall' ? 'both' : 'rising';
        const turn = place.heading === null ? 0 : (-place.heading * 180) / Math.PI;
        const faces = `M${tenth(-thick / 2)} ${tenth(-tall / 2)}V${tenth(tall / 2)}M${tenth(thick / 2)} ${tenth(-tall / 2)}V${tenth(tall / 2)}`;
        return (
          <g key={crossing.at} transform={`translate(${tenth(x)} ${tenth(y)}) rotate(${tenth(turn)})`}>
            <path
              d={ends.map((box) => hatch(box, direction, 3)).join('')}
              stroke={inks.ink}
              stroke-width={0.5}
              fill="none"
            />
            <path d={faces} stroke={inks.ink} stroke-width={1.1} fill="none" />
          </g>
        );
      })}
    </>
  );
}
