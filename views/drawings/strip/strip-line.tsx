import type { JSX } from 'preact';
import { hatch, type Inks } from '../ink.tsx';
import { tenth } from '../scale.ts';
import type { Band } from './bands.ts';
import { Lettering } from './lettering.tsx';
import { BODY, CLAMP, LETTER } from './metrics.ts';
import type { LinePlan } from './plan-line.ts';
import { StripEnds } from './strip-ends.tsx';
import { StripThing } from './strip-thing.tsx';

const ORDER = ['piece', 'support', 'tap', 'joint'] as const;

/** One line of the strip, drawn with plain attributes so that a page and a PDF show the same. */
export function StripLine({ line, y, inks }: { line: LinePlan; y: number; inks: Inks }): JSX.Element {
  const loose = line.labels.filter((label) => label.of === null);
  const things = ORDER.flatMap((kind) => line.things.filter(({ thing }) => thing.kind === kind));
  return (
    <g transform={`translate(0 ${tenth(y)})`}>
      {line.heading !== '' && (
        <text x={3} y={LETTER} font-size={LETTER} fill={inks.ink}>
          {line.heading}
        </text>
      )}
      {line.bands.map((band) => (
        <HatchedBand key={`${band.kind}${band.box.x}${band.box.y}`} band={band} inks={inks} />
      ))}
      <path d={framework(line)} stroke={inks.ink} stroke-width={0.7} fill="none" />
      <path d={centreLine(line)} stroke={inks.ink} stroke-width={0.7} stroke-dasharray="12 3 2 3" fill="none" />
      {loose.map((label) => (
        <Lettering key={`${label.text}${label.x}`} label={label} inks={inks} />
      ))}
      {things.map((drawn) => (
        <StripThing key={`${drawn.thing.kind}${drawn.thing.mark}`} drawn={drawn} line={line} inks={inks} />
      ))}
      <StripEnds line={line} inks={inks} />
      <path d={dimension(line)} stroke={inks.ink} stroke-width={0.9} fill="none" />
      <path d={obliques(line)} stroke={inks.ink} stroke-width={1.8} fill="none" />
    </g>
  );
}

function HatchedBand({ band: { box, kind }, inks }: { band: Band; inks: Inks }) {
  const through = kind === 'wall' || kind === 'fire-wall' || kind === 'floor';
  const d = hatch(box, kind === 'fire-wall' ? 'both' : kind === 'no-joint' ? 'falling' : 'rising', through ? 4 : 6);
  const sides = through ? faces(box.x, box.x + box.width, box.y, box.y + box.height) : '';
  return (
    <>
      <path d={d} stroke={inks.ink} stroke-width={0.6} fill="none" />
      <path d={sides} stroke={inks.ink} stroke-width={1.4} fill="none" />
    </>
  );
}

function faces(left: number, right: number, top: number, bottom: number): string {
  return `M${tenth(left)} ${tenth(top)}V${tenth(bottom)}M${tenth(right)} ${tenth(top)}V${tenth(bottom)}`;
}

/** The underside of the structure, and the extension lines from the joints down to the dimension line. */
function framework(line: LinePlan): string {
  const structure = `M${tenth(line.startX)} ${tenth(line.structureY)}H${tenth(line.endX)}`;
  const extensions = line.ticks.map(
    (x) => `M${tenth(x)} ${tenth(line.bodyY + BODY + CLAMP.reach + 2)}V${tenth(line.dimensionY + 5)}`,
  );
  return structure + extensions.join('');
}

function centreLine(line: LinePlan): string {
  return `M${tenth(line.startX - 6)} ${tenth(line.bodyY + BODY / 2)}H${tenth(line.endX + 6)}`;
}

function dimension(line: LinePlan): string {
  return `M${tenth(line.startX)} ${tenth(line.dimensionY)}H${tenth(line.endX)}`;
}

function obliques(line: LinePlan): string {
  const y = line.dimensionY;
  return line.ticks.map((x) => `M${tenth(x - 3.5)} ${tenth(y + 3.5)}L${tenth(x + 3.5)} ${tenth(y - 3.5)}`).join('');
}
