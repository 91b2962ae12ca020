import type { JSX } from 'preact';
import { hatch, InkedBox, inksFor } from '../ink.tsx';
import { LegendWall, LegendWord } from './legend-signs.tsx';

const inks = inksFor('paper');

/** What the signs of a printed strip mean. */
export function StripLegend(): JSX.Element {
  return (
    <>
      <InkedBox box={{ x: 0, y: 5, width: 26, height: 12 }} ink="firm" inks={inks} />
      <LegendWord x={31} text="P piece with its length" />
      <InkedBox box={{ x: 140, y: 3, width: 6, height: 16 }} ink="firm" inks={inks} />
      <LegendWord x={151} text="J joint, from the feed" />
      <InkedBox box={{ x: 251, y: 3, width: 9, height: 8 }} ink="firm" inks={inks} />
      <path d="M255.5 11V20" stroke={inks.ink} stroke-width={1.6} fill="none" />
      <LegendWord x={265} text="H hanger, from the feed" />
      <InkedBox box={{ x: 375, y: 5, width: 12, height: 12 }} ink="firm" inks={inks} />
      <LegendWord x={392} text="tap-off on the side it faces" />
      <LegendWall box={{ x: 514, y: 4, width: 16, height: 14 }} kind="rising" step={4} />
      <LegendWord x={537} text="wall or floor" />
      <LegendWall box={{ x: 602, y: 4, width: 16, height: 14 }} kind="both" step={4} />
      <LegendWord x={625} text="fire wall" />
      <path
        d={hatch({ x: 676, y: 8, width: 22, height: 6 }, 'falling', 6)}
        stroke={inks.ink}
        stroke-width={0.6}
        fill="none"
      />
      <LegendWord x={703} text="no joint here" />
      <path d="M771 6h14v11h-14z" stroke={inks.ink} stroke-width={2.2} fill="none" />
      <path d="M775 8.5V14.5L782 11.5Z" fill={inks.ink} />
      <LegendWord x={790} text="feed" />
      <rect x={822} y={4} width={5} height={15} fill={inks.ink} />
      <LegendWord x={832} text="end cap" />
      <path d="M880 20V4M873 12L880 4L887 12" stroke={inks.ink} stroke-width={2.4} fill="none" />
      <LegendWord x={893} text="way that taps face" />
    </>
  );
}
