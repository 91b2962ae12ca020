import type { JSX } from 'preact';
import type { Inks } from '../ink.tsx';
import { tenth } from '../scale.ts';
import { LETTER, ROOM } from './view.ts';

export function North({ x, y = 0, inks }: { x: number; y?: number; inks: Inks }): JSX.Element {
  return (
    <g transform={y === 0 ? undefined : `translate(0 ${y})`}>
      <path d={`M${x} 30V6M${x - 5} 14L${x} 4L${x + 5} 14`} stroke={inks.ink} stroke-width={1.4} fill="none" />
      <text x={x - 10} y={14} font-size={LETTER} font-weight="bold" text-anchor="end" fill={inks.ink}>
        north
      </text>
    </g>
  );
}

/** The scale bar, half of it inked. */
export function Bar(props: { length: number; text: string; x?: number; y: number; inks: Inks }): JSX.Element {
  const { length, text, x = ROOM.side, y, inks } = props;
  const half = tenth(length / 2);
  return (
    <>
      <rect x={x} y={y - 6} width={half} height={6} fill={inks.ink} />
      <rect x={x} y={y - 6} width={tenth(length)} height={6} fill="none" stroke={inks.ink} stroke-width={1} />
      <text x={tenth(x + length + 8)} y={y + 1} font-size={LETTER} fill={inks.ink}>
        {text}
      </text>
    </>
  );
}
