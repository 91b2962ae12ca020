import type { JSX } from 'preact';
import type { FlowPlan } from '../../src/domain/schedule/flow-line.ts';
import { type InkMode, inksFor } from './ink.tsx';
import { linear, tenth } from './scale.ts';
import { textWidth } from './text-width.ts';

export interface FlowChartProps {
  readonly plan: FlowPlan;
  readonly levels: readonly string[];
  /** The date of each working day. */
  readonly dates: readonly string[];
  readonly of: string;
  readonly ink: InkMode;
  readonly width?: number;
}

const LETTER = 12;
const HEAD = 22;
/** A level is so high, and less where they are many: a tall building still fits a screen or two. */
const ROW = { most: 46, least: 8, all: 600 };
/** Told apart without colour. */
const DASHES = ['', '9 4', '2 3', '12 3 2 3', '5 2', '1 4', '14 4', '6 2 1 2'];

/**
 * Crews over levels: days to the right, the first level at the bottom. A line rises through a level while its crew works
 * there; the number on it is the crew's place in the list. Where a line runs level the crew stands.
 */
export function FlowChart({ plan, levels, dates, of, ink, width = 960 }: FlowChartProps): JSX.Element {
  const inks = inksFor(ink);
  const left = Math.max(...levels.map((level) => textWidth(level, LETTER))) + 14;
  const row = Math.min(ROW.most, Math.max(ROW.least, ROW.all / Math.max(1, levels.length)));
  // Higher up the lines stand apart, and so do the numbers on them.
  const apart = Math.floor(levels.length / 4);
  const named = Math.ceil((LETTER + 2) / row);
  const height = HEAD + levels.length * row + 34;
  const toX = linear([0, Math.max(1, plan.finish)], [left, width - 16]);
  const edge = (level: number) => height - 34 - level * row;
  const words = `${of}: finish after ${plan.finish} working days; ${plan.crews.map(({ name, stays, idle }) => `${name} from day ${(stays[0]?.start ?? 0) + 1}, idle ${idle}`).join('; ')}`;
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
      {levels.map((level, index) => (
        <g key={level}>
          <line
            x1={left}
            x2={width - 16}
            y1={tenth(edge(index))}
            y2={tenth(edge(index))}
            stroke={inks.ink}
            stroke-width={0.5}
          />
          {index % named === 0 && (
            <text x={4} y={tenth(edge(index) - row / 2 + 4)} fill={inks.ink}>
              {level}
            </text>
          )}
        </g>
      ))}
      <Weeks toX={toX} finish={plan.finish} dates={dates} top={edge(levels.length)} foot={edge(0)} ink={inks.ink} />
      {plan.crews.map(({ name, stays }, crew) => (
        <g key={name}>
          <path
            d={stays
              .map(
                ({ start, finish }, level) =>
                  `${level === 0 ? 'M' : 'L'}${tenth(toX(start))} ${tenth(edge(level))}L${tenth(toX(finish))} ${tenth(edge(level + 1))}`,
              )
              .join('')}
            fill="none"
            stroke={inks.ink}
            stroke-width={2.2}
            stroke-dasharray={DASHES[crew % DASHES.length] || undefined}
          />
          {stays.length > 0 && (
            <CrewNumber
              at={{ x: (toX(stays[apart]!.start) + toX(stays[apart]!.finish)) / 2, y: tenth(edge(apart) - row / 2) }}
              of={crew + 1}
              inks={inks}
            />
          )}
        </g>
      ))}
    </svg>
  );
}

function Weeks(props: {
  toX: (day: number) => number;
  finish: number;
  dates: readonly string[];
  top: number;
  foot: number;
  ink: string;
}) {
  const { toX, finish, dates, top, foot, ink } = props;
  const room = 60 / Math.max(1, toX(1) - toX(0));
  const every = Math.max(5, Math.ceil(room / 5) * 5);
  const days = Array.from({ length: Math.floor(finish / every) + 1 }, (_, i) => i * every);
  return (
    <>
      {days.map((day) => (
        <g key={day}>
          <line x1={tenth(toX(day))} x2={tenth(toX(day))} y1={top} y2={foot + 5} stroke={ink} stroke-width={0.4} />
          <text x={tenth(toX(day))} y={foot + 18} fill={ink}>
            {dates[day]?.slice(5) ?? ''}
          </text>
        </g>
      ))}
    </>
  );
}

function CrewNumber({
  at,
  of,
  inks,
}: {
  at: { x: number; y: number };
  of: number;
  inks: { ink: string; ground: string };
}) {
  return (
    <>
      <circle cx={tenth(at.x)} cy={at.y} r={9} fill={inks.ground} stroke={inks.ink} />
      <text x={tenth(at.x)} y={at.y + 4} text-anchor="middle" fill={inks.ink}>
        {of}
      </text>
    </>
  );
}
