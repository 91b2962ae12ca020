import type { JSX } from 'preact';
import type { Bar } from '../../src/domain/labour/histogram.ts';
import { type InkMode, inksFor } from './ink.tsx';
import { placeLabels } from './label-lane.ts';
import { linear, tenth } from './scale.ts';
import { textWidth } from './text-width.ts';

export interface HistogramChartProps {
  readonly bars: readonly Bar[];
  /** Lines across the bars: P50, P80. */
  readonly marks: readonly { readonly word: string; readonly at: number }[];
  readonly of: string;
  readonly write: (value: number) => string;
  readonly ink: InkMode;
  readonly width?: number;
}

const LETTER = 12;
const TOP = 20;
const HEIGHT = 130;
const FOOT = TOP + HEIGHT;

/** How often each total came out, least to the left; marks stand across the bars. */
export function HistogramChart({ bars, marks, of, write, ink, width = 720 }: HistogramChartProps): JSX.Element {
  const inks = inksFor(ink);
  const first = bars[0]?.from ?? 0;
  const last = bars.at(-1)?.to ?? 1;
  const toX = linear([first, Math.max(last, first + 1e-9)], [50, width - 50]);
  const most = Math.max(1, ...bars.map(({ count }) => count));
  const labels = marks.map(({ word, at }) => ({ x: toX(at), width: textWidth(word, LETTER) }));
  const placed = placeLabels(labels, { from: 2, to: width - 2, obstacles: [], rows: 1 });
  const words = `${of}: from ${write(first)} to ${write(last)}; ${marks.map(({ word, at }) => `${word} ${write(at)}`).join(', ')}`;
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      role="img"
      aria-label={words}
      viewBox={`0 0 ${width} ${FOOT + 24}`}
      width={width}
      height={FOOT + 24}
      font-family="Helvetica, Arial, sans-serif"
      font-size={LETTER}
    >
      <title>{words}</title>
      {bars.map(({ from, to, count }) => {
        const height = (count / most) * HEIGHT;
        return (
          <rect
            key={from}
            x={tenth(toX(from) + 0.5)}
            y={tenth(FOOT - height)}
            width={tenth(Math.max(0.5, toX(to) - toX(from) - 1))}
            height={tenth(height)}
            fill={inks.ground}
            stroke={inks.ink}
          />
        );
      })}
      <line x1={50} x2={width - 50} y1={FOOT} y2={FOOT} stroke={inks.ink} />
      {marks.map(({ word, at }, index) => (
        <g key={word}>
          <line
            x1={tenth(toX(at))}
            x2={tenth(toX(at))}
            y1={TOP - 4}
            y2={FOOT + 4}
            stroke={inks.ink}
            stroke-width={1.6}
            stroke-dasharray="5 3"
          />
          <text x={tenth(placed[index]!.labelX)} y={LETTER} text-anchor="middle" fill={inks.ink}>
            {word}
          </text>
        </g>
      ))}
      <text x={50} y={FOOT + 18} text-anchor="middle" fill={inks.ink}>
        {write(first)}
      </text>
      <text x={width - 50} y={FOOT + 18} text-anchor="middle" fill={inks.ink}>
        {write(last)}
      </text>
    </svg>
  );
}
