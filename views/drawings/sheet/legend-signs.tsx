import type { JSX } from 'preact';
import { hatch, inksFor } from '../ink.tsx';

const inks = inksFor('paper');

/** A word of a legend, on its one line. */
export function LegendWord({ x, text }: { x: number; text: string }): JSX.Element {
  return (
    <text x={x} y={14} font-size={8} fill={inks.ink}>
      {text}
    </text>
  );
}

/** A wall or floor that is passed; hatched both ways when it is a fire wall. */
export function LegendWall(props: {
  readonly box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  readonly kind: 'rising' | 'both';
  readonly step: number;
}): JSX.Element {
  const { box, kind, step } = props;
  const [foot, right] = [box.y + box.height, box.x + box.width];
  return (
    <path
      d={`${hatch(box, kind, step)}M${box.x} ${box.y}V${foot}M${right} ${box.y}V${foot}`}
      stroke={inks.ink}
      stroke-width={0.7}
      fill="none"
    />
  );
}
