import type { JSX } from 'preact';
import { linear, tenth } from '../drawings/scale.ts';

export interface MeterProps {
  readonly done: number;
  readonly planned: number;
  /** In the plural: "joints", "h". */
  readonly of: string;
  /** How a figure is written; as it is by default. */
  readonly write?: (value: number) => string;
}

const WIDTH = 120;

/** Done of planned: the figures in words, and a bar inked as far as the work is. More than planned runs past the end. */
export function Meter({ done, planned, of, write = String }: MeterProps): JSX.Element {
  const toX = linear([0, Math.max(planned, done, 1)], [0, WIDTH - 2]);
  return (
    <span class="measure">
      <svg width={WIDTH} height="12" viewBox={`0 0 ${WIDTH} 12`} aria-hidden="true">
        <rect x="1" y="1" width={tenth(toX(planned))} height="10" fill="none" stroke="currentColor" stroke-width="1" />
        <rect x="1" y="3" width={tenth(toX(done))} height="6" fill="currentColor" />
      </svg>
      <span>
        {write(done)} of {write(planned)} {of}
      </span>
    </span>
  );
}
