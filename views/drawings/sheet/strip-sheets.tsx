import type { JSX } from 'preact';
import { inksFor } from '../ink.tsx';
import { tenth } from '../scale.ts';
import { packLines } from '../strip/lines.ts';
import { MARGIN } from '../strip/metrics.ts';
import { crowded, outgrown, planStrip, type StripPlan, scattered, strayOf } from '../strip/plan.ts';
import type { StripProps } from '../strip/props.ts';
import { StripLine } from '../strip/strip-line.tsx';
import type { SheetHead } from './head.ts';
import { sheetLayout } from './layout.ts';
import { type PaperName, unitsPerLength } from './papers.ts';
import { scalesOf, scaleWord, smallestOf } from './scales.ts';
import { Sheet } from './sheet.tsx';
import { StripLegend } from './strip-legend.tsx';

export interface StripPrint {
  readonly strip: Pick<StripProps, 'run' | 'layout' | 'record' | 'units'>;
  readonly head: SheetHead;
  readonly paper: PaperName;
  /** null: the largest scale that takes the whole run on one line, and a larger one over more lines where marks would crowd. */
  readonly ratio: number | null;
}

export type Printed =
  | { readonly ok: true; readonly ratio: number; readonly sheets: readonly JSX.Element[] }
  | { readonly ok: false; readonly why: string; readonly remedy: string };

/** A run's strip on paper at a true scale: laid along the sheet, broken over lines at joints, lines over sheets. */
export function printStrip(print: StripPrint): Printed {
  const { strip, paper, head } = print;
  const layout = sheetLayout(paper);
  const { ratio, plan } = chosen(print, layout.frame.width);
  const isChosen = print.ratio !== null;
  if (outgrown(plan, layout.frame.height) || (isChosen && scattered(plan)))
    return tooSmall(ratio, strip.run.id, strip.units);
  const inks = inksFor('paper');
  const groups = packLines(plan.lines, layout.frame.height);
  const sheets = groups.map((lines, index) => {
    const gap = lines.length > 1 ? Math.min(30, (layout.frame.height - heightOf(lines)) / lines.length) : 0;
    return (
      <Sheet
        key={index}
        head={head}
        layout={layout}
        paper={paper}
        ratio={ratio}
        sheet={index + 1}
        sheets={groups.length}
        legend={<StripLegend />}
      >
        {lines.map((line, place) => (
          <g key={line.stretch.from} transform={`translate(${layout.frame.x} 0)`}>
            <StripLine
              line={line}
              y={tenth(layout.frame.y + heightOf(lines.slice(0, place)) + gap * place)}
              inks={inks}
            />
          </g>
        ))}
      </Sheet>
    );
  });
  return { ok: true, ratio, sheets };
}

function chosen({ strip, ratio }: StripPrint, width: number): { ratio: number; plan: StripPlan } {
  const at = (tried: number) => ({
    ratio: tried,
    plan: planStrip({ ...strip, ink: 'paper', width, scale: unitsPerLength(tried), allAlike: true }),
  });
  if (ratio !== null) return at(ratio);
  const room = width - MARGIN.left - MARGIN.right;
  const usual = scalesOf(strip.units).filter((scale) => scale.ratio <= smallestOf('strip', strip.units));
  const one = usual.find((scale) => strip.layout.length * unitsPerLength(scale.ratio) <= room) ?? usual.at(-1)!;
  const tried: ReturnType<typeof at>[] = [];
  for (const scale of usual.toReversed()) {
    if (scale.ratio > one.ratio) continue;
    const next = at(scale.ratio);
    if (!crowded(next.plan)) return next;
    tried.push(next);
  }
  return leastCrowded(tried);
}

/** Where marks stand at one place no scale parts them: then the smallest drawing that is about as clear as the clearest. */
function leastCrowded<Tried extends { readonly plan: StripPlan }>(tried: readonly Tried[]): Tried {
  const least = Math.min(...tried.map(({ plan }) => strayOf(plan)));
  return tried.find(({ plan }) => strayOf(plan) <= least * 1.1 + 1) ?? tried[0]!;
}

function tooSmall(ratio: number, run: string, units: StripProps['units']): Printed {
  const larger = scalesOf(units).findLast((scale) => scale.ratio < ratio);
  const word = scaleWord(ratio, units);
  return {
    ok: false,
    why: `At ${word} the marks of run ${run} have no room on the sheet.`,
    remedy: `${larger === undefined ? 'Too many marks stand at one place of the run: read them in its tables.' : `Choose ${larger.word} or larger: the strip then breaks over more lines.`}`,
  };
}

function heightOf(lines: readonly { readonly height: number }[]): number {
  return lines.reduce((sum, line) => sum + line.height, 0);
}
