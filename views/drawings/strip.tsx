import type { JSX } from 'preact';
import { formatLength } from '../../src/domain/units/format-length.ts';
import { inksFor } from './ink.tsx';
import { tenth } from './scale.ts';
import { packLines } from './strip/lines.ts';
import { planStrip, type StripPlan } from './strip/plan.ts';
import type { StripProps } from './strip/props.ts';
import { StripLine } from './strip/strip-line.tsx';
import { thingsOf } from './strip/things.ts';

export type { StripItem, StripProps, StripRecord, StripRun } from './strip/props.ts';

/**
 * The strip: one run along its length, to scale, with pieces, joints, hangers, tap-offs, zones and crossings in the ink of
 * their state. A pure drawing: plain SVG attributes, so that svg-to-pdfkit draws the same on paper.
 */
export function Strip(props: StripProps): JSX.Element {
  return <StripSheet props={props} plan={planStrip(props)} part={1} parts={1} />;
}

/** The strip cut into drawings no taller than `height`, for paper. A line is never cut. */
export function stripSheets(props: StripProps, height: number): JSX.Element[] {
  const plan = planStrip(props);
  const sheets = packLines(plan.lines, height);
  return sheets.map((lines, index) => (
    <StripSheet key={index} props={props} plan={{ ...plan, lines }} part={index + 1} parts={sheets.length} />
  ));
}

interface SheetProps {
  readonly props: StripProps;
  readonly plan: StripPlan;
  readonly part: number;
  readonly parts: number;
}

function StripSheet({ props, plan, part, parts }: SheetProps) {
  const { run, ink, idPrefix = 'strip' } = props;
  const id = `${idPrefix}-${run.id.replace(/[^A-Za-z0-9_-]/g, '_')}${parts > 1 ? `-${part}` : ''}`;
  const inks = inksFor(ink);
  const tops = [0];
  for (const line of plan.lines) tops.push(tops.at(-1)! + line.height);
  const height = tenth(tops.at(-1)!);
  const linked = plan.lines.some((line) => line.things.some(({ thing }) => thing.href !== null));
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      class="strip"
      role={linked ? 'group' : 'img'}
      aria-labelledby={`${id}-title ${id}-desc`}
      viewBox={`0 0 ${plan.width} ${height}`}
      width={plan.width}
      height={height}
      font-family="Helvetica, Arial, sans-serif"
    >
      <title id={`${id}-title`}>{`Strip of run ${run.id}${parts > 1 ? `, part ${part} of ${parts}` : ''}`}</title>
      <desc id={`${id}-desc`}>{describe(props)}</desc>
      {plan.lines.map((line, index) => (
        <StripLine key={line.stretch.from} line={line} y={tops[index]!} inks={inks} />
      ))}
    </svg>
  );
}

function describe(props: StripProps): string {
  const { layout, units } = props;
  const count = (kind: string) => thingsOf(props).filter((thing) => thing.kind === kind).length;
  return `${formatLength(layout.length, units)} long: ${count('piece')} pieces, ${count('joint')} joints, ${count('support')} hangers, ${count('tap')} tap-offs. The table beside the drawing lists the same things.`;
}
