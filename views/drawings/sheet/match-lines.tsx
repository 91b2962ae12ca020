import type { JSX } from 'preact';
import { type Box, tenth } from '../scale.ts';
import { besideTile, type Tile } from './plan-tiles.ts';

/** Where a plan goes on on another sheet: a heavy broken line at that edge of the frame, and the number of the sheet. */
export function MatchLines(props: { tiles: readonly Tile[]; tile: Tile; frame: Box; over: number }): JSX.Element {
  const { tiles, tile, frame, over } = props;
  const [left, top] = [tenth(frame.x + over), tenth(frame.y + over)];
  const [right, bottom] = [tenth(frame.x + frame.width - over), tenth(frame.y + frame.height - over)];
  const [middleX, middleY] = [tenth((left + right) / 2), tenth((top + bottom) / 2)];
  const sides = [
    { beside: besideTile(tiles, tile, -1, 0), d: `M${left} ${top}V${bottom}`, x: left - 4, y: middleY, turn: -90 },
    { beside: besideTile(tiles, tile, 1, 0), d: `M${right} ${top}V${bottom}`, x: right + 10, y: middleY, turn: -90 },
    { beside: besideTile(tiles, tile, 0, -1), d: `M${left} ${top}H${right}`, x: middleX, y: top - 4, turn: 0 },
    { beside: besideTile(tiles, tile, 0, 1), d: `M${left} ${bottom}H${right}`, x: middleX, y: bottom + 11, turn: 0 },
  ];
  return (
    <>
      {sides.map(({ beside, d, x, y, turn }) => {
        if (beside === null) return null;
        const text = `match line: see sheet ${beside.sheet}`;
        const width = text.length * 4.4;
        const ground = turn === 0 ? { x: x - width / 2, y: y - 8 } : { x: x - 8, y: y - width / 2 };
        const size = turn === 0 ? { width, height: 11 } : { width: 11, height: width };
        return (
          <g key={d}>
            <path d={d} stroke="#000000" stroke-width={2} stroke-dasharray="16 5" fill="none" />
            <rect x={tenth(ground.x)} y={tenth(ground.y)} {...size} fill="#ffffff" />
            <text
              x={tenth(x)}
              y={tenth(y)}
              font-size={8.5}
              text-anchor="middle"
              transform={turn === 0 ? undefined : `rotate(${turn} ${tenth(x)} ${tenth(y)})`}
              fill="#000000"
            >
              {text}
            </text>
          </g>
        );
      })}
    </>
  );
}
