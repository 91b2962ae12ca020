import type { JSX } from 'preact';
import { InkedBox, inksFor } from '../ink.tsx';
import { LegendWall, LegendWord } from './legend-signs.tsx';

const inks = inksFor('paper');

/** What the signs of a printed plan mean. */
export function PlanLegend(): JSX.Element {
  return (
    <>
      <InkedBox box={{ x: 0, y: 7, width: 14, height: 8 }} ink="thin" inks={inks} />
      <InkedBox box={{ x: 14, y: 7, width: 14, height: 8 }} ink="thin" inks={inks} />
      <LegendWord x={33} text="run, piece by piece" />
      <path d="M133 18V11M140 18V11M147 18V11M128 18H152" stroke={inks.ink} stroke-width={1.2} fill="none" />
      <LegendWord x={157} text="tap-offs" />
      <path d="M208 20V5M204 10L208 5L212 10" stroke={inks.ink} stroke-width={1.4} fill="none" />
      <LegendWord x={217} text="way that taps face" />
      <circle cx={312} cy={11} r={4.5} fill={inks.ink} />
      <LegendWord x={321} text="end feed" />
      <rect x={366} y={7} width={8} height={8} fill={inks.ink} />
      <LegendWord x={379} text="centre feed" />
      <circle cx={438} cy={11} r={4} fill={inks.ground} stroke={inks.ink} stroke-width={1.6} />
      <LegendWord x={447} text="tee" />
      <LegendWall box={{ x: 478, y: 3, width: 12, height: 16 }} kind="rising" step={3} />
      <LegendWord x={496} text="wall or floor" />
      <LegendWall box={{ x: 560, y: 3, width: 12, height: 16 }} kind="both" step={3} />
      <LegendWord x={578} text="fire wall" />
      <path d="M630 11H665" stroke={inks.ink} stroke-width={0.5} stroke-dasharray="10 3 2 3" fill="none" />
      <LegendWord x={670} text="structure for hangers, from the level’s origin" />
      <path d="M858 11H890" stroke={inks.ink} stroke-width={2} stroke-dasharray="16 5" fill="none" />
      <LegendWord x={895} text="match line" />
    </>
  );
}
