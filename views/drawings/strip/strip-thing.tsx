import type { JSX } from 'preact';
import { InkedBox, type Inks } from '../ink.tsx';
import { type Box, tenth } from '../scale.ts';
import type { DrawnLabel } from './fill-lane.ts';
import { boxOfLabel, Lettering } from './lettering.tsx';
import { BODY, CLAMP } from './metrics.ts';
import type { DrawnThing, LinePlan } from './plan-line.ts';

const LEAST_TARGET = 24;

interface ThingProps {
  readonly drawn: DrawnThing;
  readonly line: LinePlan;
  readonly inks: Inks;
}

/** One piece, joint, hanger or tap-off in its ink, with its label; a link where it leads somewhere. */
export function StripThing({ drawn, line, inks }: ThingProps): JSX.Element {
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

function Rod({ drawn, line, inks }: ThingProps) {
  const { thing, box } = drawn;
  const x = tenth(box.x + box.width / 2);
  const planned = thing.ink === 'dashed';
  return (
    <path
      d={`M${x} ${tenth(box.y + box.height)}L${x} ${tenth(line.bodyY)}`}
      stroke={inks.ink}
      stroke-width={planned ? 1 : 1.8}
      stroke-dasharray={planned ? '3 2' : undefined}
      fill="none"
    />
  );
}

/** The bend of an elbow: the mitre of its corner. */
function Mitre({ drawn: { thing, box }, inks }: Omit<ThingProps, 'line'>) {
  const stroke = thing.ink === 'solid' ? inks.ground : inks.ink;
  const d = `M${tenth(box.x)} ${tenth(box.y + box.height)}L${tenth(box.x + box.width)} ${tenth(box.y)}`;
  return <path d={d} stroke={stroke} stroke-width={1.4} fill="none" />;
}

/** The branch arm of a tee, on the side where the branch leaves. */
function Branch({ drawn: { thing, box }, line, inks }: ThingProps) {
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
