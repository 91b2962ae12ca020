import type { JSX } from 'preact';
import { hatch, InkedBox, inksFor } from '../ink.tsx';

const inks = inksFor('paper');

/** What the signs of a printed plan mean. */
export function PlanLegend(): JSX.Element {
  return (
    <>
      <InkedBox box={{ x: 0, y: 7, width: 14, height: 8 }} ink="thin" inks={inks} />
      <InkedBox box={{ x: 14, y: 7, width: 14, height: 8 }} ink="thin" inks={inks} />
      <Word x={33} text="run, piece by piece" />
      <path d="M133 18V11M140 18V11M147 18V11M128 18H152" stroke={inks.ink} stroke-width={1.2} fill="none" />
      <Word x={157} text="tap-offs" />
      <path d="M208 20V5M204 10L208 5L212 10" stroke={inks.ink} stroke-width={1.4} fill="none" />
      <Word x={217} text="way that taps face" />
      <circle cx={312} cy={11} r={4.5} fill={inks.ink} />
      <Word x={321} text="end feed" />
      <rect x={366} y={7} width={8} height={8} fill={inks.ink} />
      <Word x={379} text="centre feed" />
      <circle cx={438} cy={11} r={4} fill={inks.ground} stroke={inks.ink} stroke-width={1.6} />
      <Word x={447} text="tee" />
      <Crossed x={478} kind="rising" />
      <Word x={496} text="wall or floor" />
      <Crossed x={560} kind="both" />
      <Word x={578} text="fire wall" />
      <path d="M630 11H665" stroke={inks.ink} stroke-width={0.5} stroke-dasharray="10 3 2 3" fill="none" />
      <Word x={670} text="structure for hangers, from the level’s origin" />
      <path d="M858 11H890" stroke={inks.ink} stroke-width={2} stroke-dasharray="16 5" fill="none" />
      <Word x={895} text="match line" />
    </>
  );
}

function Crossed({ x, kind }: { x: number; kind: 'rising' | 'both' }) {
  return (
    <path
      d={`${hatch({ x, y: 3, width: 12, height: 16 }, kind, 3)}M${x} 3V19M${x + 12} 3V19`}
      stroke={inks.ink}
      stroke-width={0.7}
      fill="none"
    />
  );
}

function Word({ x, text }: { x: number; text: string }) {
  return (
    <text x={x} y={14} font-size={8} fill={inks.ink}>
      {text}
    </text>
  );
}
