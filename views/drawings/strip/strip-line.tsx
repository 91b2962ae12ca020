import type { JSX } from 'preact';
import { hatch, InkedBox, type Inks } from '../ink.tsx';
import { type Box, tenth } from '../scale.ts';
import type { Band } from './bands.ts';
import type { DrawnLabel } from './fill-lane.ts';
import { BODY, CLAMP, LETTER } from './metrics.ts';
import type { DrawnThing, LinePlan } from './plan-line.ts';
import { StripEnds } from './strip-ends.tsx';

const LEAST_TARGET = 24;
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
        <LinkedThing key={`${drawn.thing.kind}${drawn.thing.mark}`} drawn={drawn} line={line} inks={inks} />
      ))}
      <StripEnds line={line} inks={inks} />
      <path d={dimension(line)} stroke={inks.ink} stroke-width={0.9} fill="none" />
      <path d={obliques(line)} stroke={inks.ink} stroke-width={1.8} fill="none" />
    </g>
  );
}

function LinkedThing({ drawn, line, inks }: { drawn: DrawnThing; line: LinePlan; inks: Inks }) {
  const { thing, box } = drawn;
  const label = line.labels.find((candidate) => candidate.of === thing);
  const content = (
    <>
      <title>{`${thing.mark}, ${thing.what}: ${thing.word}`}</title>
      {thing.kind === 'support' && <Rod drawn={drawn} line={line} inks={inks} />}
      <InkedBox box={box} ink={thing.ink} inks={inks} />
      {thing.piece?.kind === 'elbow' && <Mitre drawn={drawn} inks={inks} />}
      {thing.piece?.kind === 'tee' && <Branch drawn={drawn} line={line} inks={inks} />}
      {label && <Lettering label={label} inks={inks} />}
    </>
  );
  if (thing.href === null) return <g>{content}</g>;
  return (
    <a href={thing.href} class="pick">
      {content}
      <rect {...targetOf(box, label)} fill="none" pointer-events="all" />
    </a>
  );
}

/** A place to press that is large enough (WCAG 2.5.8): the thing and its label together. */
function targetOf(box: Box, label: DrawnLabel | undefined): Box {
  const boxes = label ? [box, boxOfLabel(label)] : [box];
  const left = Math.min(...boxes.map((one) => one.x));
  const right = Math.max(...boxes.map((one) => one.x + one.width));
  const top = Math.min(...boxes.map((one) => one.y));
  const bottom = Math.max(...boxes.map((one) => one.y + one.height));
  const spare = Math.max(0, LEAST_TARGET - (right - left)) / 2;
  return { x: tenth(left - spare), y: tenth(top), width: tenth(right - left + 2 * spare), height: tenth(bottom - top) };
}

function boxOfLabel({ x, y, width }: DrawnLabel): Box {
  return { x: x - width / 2 - 1, y: y - LETTER * 0.82, width: width + 2, height: LETTER + 1 };
}

function Lettering({ label, inks }: { label: DrawnLabel; inks: Inks }) {
  const { x, y, leader, text, of } = label;
  const ground = boxOfLabel(label);
  const strong = of?.kind === 'piece' || of?.kind === 'tap';
  return (
    <>
      {leader && <polyline points={points(leader)} stroke={inks.ink} stroke-width={0.6} fill="none" />}
      <rect
        x={tenth(ground.x)}
        y={tenth(ground.y)}
        width={tenth(ground.width)}
        height={ground.height}
        fill={inks.ground}
      />
      <text
        x={tenth(x)}
        y={tenth(y)}
        font-size={LETTER}
        font-weight={strong ? 'bold' : undefined}
        text-anchor="middle"
        fill={inks.ink}
      >
        {text}
      </text>
    </>
  );
}

function Rod({ drawn, line, inks }: { drawn: DrawnThing; line: LinePlan; inks: Inks }) {
  const { thing, box } = drawn;
  const x = tenth(box.x + box.width / 2);
  const planned = thing.ink === 'dashed';
  return (
    <path
      d={`M${x} ${tenth(line.structureY)}L${x} ${tenth(box.y)}`}
      stroke={inks.ink}
      stroke-width={planned ? 1 : 1.8}
      stroke-dasharray={planned ? '3 2' : undefined}
      fill="none"
    />
  );
}

/** The bend of an elbow: the mitre of its corner. */
function Mitre({ drawn: { thing, box }, inks }: { drawn: DrawnThing; inks: Inks }) {
  const stroke = thing.ink === 'solid' ? inks.ground : inks.ink;
  const d = `M${tenth(box.x)} ${tenth(box.y + box.height)}L${tenth(box.x + box.width)} ${tenth(box.y)}`;
  return <path d={d} stroke={stroke} stroke-width={1.4} fill="none" />;
}

/** The branch arm of a tee, on the side where the branch leaves. */
function Branch({ drawn: { thing, box }, line, inks }: { drawn: DrawnThing; line: LinePlan; inks: Inks }) {
  const near = thing.piece?.hand?.startsWith('near') ?? true;
  const up = near === line.tapsAbove;
  const height = CLAMP.reach + 6;
  const arm = {
    x: box.x + box.width / 2 - BODY / 2,
    y: up ? box.y - height : box.y + box.height,
    width: BODY,
    height,
  };
  return <InkedBox box={arm} ink={thing.ink} inks={inks} />;
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

function points(leader: readonly (readonly [number, number])[]): string {
  return leader.map(([x, y]) => `${tenth(x)},${tenth(y)}`).join(' ');
}
