import type { JSX } from 'preact';
import type { LabourRange } from '../../src/domain/labour/result.ts';
import { type InkMode, inksFor } from './ink.tsx';
import { placeLabels } from './label-lane.ts';
import { linear, tenth } from './scale.ts';
import { textWidth } from './text-width.ts';

export interface RangeBarProps {
  readonly range: Pick<LabourRange, 'likely' | 'p10' | 'p50' | 'p80' | 'p90'>;
  /** What the range is of: "hours of the job". */
  readonly of: string;
  readonly write: (value: number) => string;
  readonly ink: InkMode;
  readonly width?: number;
}

const LETTER = 12;
const ROW = 14;
const BAR = { y: 8, height: 14 };
const LABELS = BAR.y + BAR.height + 12;

/**
 * The range of an estimate on one line: outlined from P10 to P90, inked from P50 to P80 (what a contingency at P80 adds),
 * the likely sum as a mark. Where it stands says how the risk leans.
 */
export function RangeBar({ range, of, write, ink, width = 720 }: RangeBarProps): JSX.Element {
  const inks = inksFor(ink);
  const { likely, p10, p50, p80, p90 } = range;
  const low = Math.min(likely, p10);
  const high = Math.max(likely, p90, low + 1);
  const toX = linear([low, high], [70, width - 70]);
  const marks = [
    { text: `P10 ${write(p10)}`, at: p10 },
    { text: `P50 ${write(p50)}`, at: p50 },
    { text: `P80 ${write(p80)}`, at: p80 },
    { text: `P90 ${write(p90)}`, at: p90 },
    { text: `likely ${write(likely)}`, at: likely },
  ];
  const labels = marks.map((mark) => ({ x: toX(mark.at), width: textWidth(mark.text, LETTER) }));
  const placed = placeLabels(labels, { from: 2, to: width - 2, obstacles: [], rows: 5 });
  const height = LABELS + Math.max(...placed.map((place) => place.row + 1)) * ROW + 2;
  const words = `${of}: ${marks.map((mark) => mark.text).join(', ')}`;
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      role="img"
      aria-label={words}
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      font-family="Helvetica, Arial, sans-serif"
      font-size={LETTER}
    >
      <title>{words}</title>
      <rect {...BAR} x={tenth(toX(p50))} width={tenth(toX(p80) - toX(p50))} fill={inks.ink} />
      <rect {...BAR} x={tenth(toX(p10))} width={tenth(toX(p90) - toX(p10))} fill="none" stroke={inks.ink} />
      <path d={diamond(toX(likely), BAR.y - 1)} fill={inks.ink} />
      {marks.map((mark, index) => {
        const { labelX, row } = placed[index]!;
        const edge = LABELS + row * ROW;
        return (
          <g key={mark.text}>
            <polyline
              points={`${tenth(toX(mark.at))},${BAR.y + BAR.height} ${tenth(labelX)},${LABELS - 4} ${tenth(labelX)},${edge}`}
              stroke={inks.ink}
              stroke-width={0.6}
              fill="none"
            />
            <text x={tenth(labelX)} y={edge + LETTER - 1} text-anchor="middle" fill={inks.ink}>
              {mark.text}
            </text>
          </g>
        );
      })}
    </svg>
  );
}

/** Points down at the bar from above. */
function diamond(x: number, y: number): string {
  return `M${tenth(x - 5)} ${y - 7}H${tenth(x + 5)}L${tenth(x)} ${y}Z`;
}
