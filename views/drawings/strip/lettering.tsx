import type { JSX } from 'preact';
import type { Inks } from '../ink.tsx';
import { type Box, tenth } from '../scale.ts';
import type { DrawnLabel } from './fill-lane.ts';
import { LETTER } from './metrics.ts';

/** A label with its leader, on a piece of bare ground so that no line runs through it. */
export function Lettering({ label, inks }: { label: DrawnLabel; inks: Inks }): JSX.Element {
  const { x, y, leader, text, of } = label;
  const ground = boxOfLabel(label);
  const strong = of?.kind === 'piece' || of?.kind === 'tap';
  return (
    <>
      {leader && <polyline points={points(leader)} stroke={inks.ink} stroke-width={0.6} fill="none" />}
      <rect
        x={tenth(ground.x)}
        y={tenth(ground.y)}
        width={tenth(ground.width)}
        height={ground.height}
        fill={inks.ground}
      />
      <text
        x={tenth(x)}
        y={tenth(y)}
        font-size={LETTER}
        font-weight={strong ? 'bold' : undefined}
        text-anchor="middle"
        fill={inks.ink}
      >
        {text}
      </text>
    </>
  );
}

export function boxOfLabel({ x, y, width }: DrawnLabel): Box {
  return { x: x - width / 2 - 1, y: y - LETTER * 0.82, width: width + 2, height: LETTER + 1 };
}

function points(leader: readonly (readonly [number, number])[]): string {
  return leader.map(([x, y]) => `${tenth(x)},${tenth(y)}`).join(' ');
}
