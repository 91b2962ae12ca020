import type { JSX } from 'preact';
import type { Side } from '../../../src/domain/model.ts';

export interface WaySketchProps {
  /** "P03": written on the piece. */
  readonly mark: string;
  /** The side that tap-offs face, looking away from the feed. */
  readonly side: Side;
  /** "north"; null on a riser. */
  readonly compass: string | null;
}

const WIDTH = 320;
const BAR = { x: 12, y: 66, width: 296, height: 34 };

/** The piece from above, the feed on the left hand: on which side its tap-offs are, with a large arrow. */
export function WaySketch({ mark, side, compass }: WaySketchProps): JSX.Element {
  const word = compass?.toUpperCase() ?? side.toUpperCase();
  const isLeft = side === 'left';
  const toY = (fromBar: number) => (isLeft ? BAR.y - fromBar : BAR.y + BAR.height + fromBar);
  return (
    <svg
      class="way"
      viewBox={`0 ${isLeft ? 0 : 50} ${WIDTH} 116`}
      width={WIDTH}
      height="116"
      role="img"
      aria-label={`${mark} seen from above, the feed on the left: tap-offs on the ${side}, facing ${word}`}
      font-family="Helvetica, Arial, sans-serif"
    >
      <rect {...BAR} fill="none" stroke="currentColor" stroke-width="2.5" />
      <path
        d={`M${BAR.x} ${isLeft ? BAR.y : BAR.y + BAR.height}h${BAR.width}`}
        stroke="currentColor"
        stroke-width="8"
      />
      <text x={BAR.x + 8} y={BAR.y + 23} font-size="15" fill="currentColor">
        feed →
      </text>
      <text x={WIDTH / 2} y={BAR.y + 24} font-size="20" font-weight="bold" text-anchor="middle" fill="currentColor">
        {mark}
      </text>
      {[60, 260].map((x) => (
        <path
          key={x}
          d={`M${x - 7} ${toY(4)}V${toY(26)}H${x - 18}L${x} ${toY(48)}L${x + 18} ${toY(26)}H${x + 7}V${toY(4)}z`}
          fill="currentColor"
        />
      ))}
      <text
        x={WIDTH / 2}
        y={isLeft ? 36 : 146}
        font-size="26"
        font-weight="bold"
        text-anchor="middle"
        fill="currentColor"
      >
        {word}
      </text>
    </svg>
  );
}
