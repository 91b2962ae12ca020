import type { JSX } from 'preact';
import type { UnitSystem } from '../../../src/domain/model.ts';
import { inksFor } from '../ink.tsx';
import { extentOf, widened } from '../plan/extent.ts';
import { Bar, North } from '../plan/furniture.tsx';
import type { PlanRun, Underlay, Window } from '../plan/props.ts';
import { scaleBar } from '../plan/scale-bar.ts';
import { Scene } from '../plan/scene.tsx';
import { Under } from '../plan/under.tsx';
import { LETTER, type View, viewAt } from '../plan/view.ts';
import { textWidth } from '../text-width.ts';
import type { SheetHead } from './head.ts';
import { checkBar, type SheetLayout, sheetLayout } from './layout.ts';
import { MatchLines } from './match-lines.tsx';
import { type PaperName, unitsPerLength } from './papers.ts';
import { PlanLegend } from './plan-legend.tsx';
import { planTiles, type Tile } from './plan-tiles.ts';
import { scalesOf, scaleWord, smallestOf } from './scales.ts';
import { Sheet } from './sheet.tsx';
import type { Printed } from './strip-sheets.tsx';

export interface PlanPrint {
  readonly runs: readonly PlanRun[];
  readonly units: UnitSystem;
  readonly head: SheetHead;
  readonly paper: PaperName;
  /** null: the largest scale that takes the level on one sheet, but several sheets rather than a scale too small to read. */
  readonly ratio: number | null;
  /** Printed under the plan, cut off at the edge of the drawing. */
  readonly underlay?: Underlay;
}

export const MOST_SHEETS = 60;
/** So much is drawn beyond a match line, on both sheets, that nothing beside it is cut off. */
const OVER = 40;
const inks = inksFor('paper');

/** A level's plan on paper at a true scale; where one sheet does not hold it, over several with match lines. */
export function printPlan(print: PlanPrint): Printed {
  const { runs, units, paper } = print;
  const layout = sheetLayout(paper);
  const extent = extentOf(runs) ?? { left: 0, right: 1, low: 0, high: 1 };
  const margin = Math.max(40, ...runs.map((run) => textWidth(run.id, LETTER) + 18));
  const ratio = print.ratio ?? usualRatio(extent, layout, margin, units);
  const scale = unitsPerLength(ratio);
  const { frame } = layout;
  const whole = widened(extent, margin / scale);
  if (!fits(whole, layout, scale, MOST_SHEETS)) return tooMany(ratio, units);
  const over = fits(whole, layout, scale, 1) ? 0 : 2 * OVER;
  const tiles = planTiles(whole, (frame.width - over) / scale, (frame.height - over) / scale, runs);
  const shown = tiles.length > 0 ? tiles : [{ column: 0, row: 0, window: whole, sheet: 1 }];
  const sheets = shown.map((tile) => planSheet(print, layout, ratio, shown, tile));
  return { ok: true, ratio, sheets };
}

function planSheet(
  { runs, units, head, paper, underlay }: PlanPrint,
  layout: SheetLayout,
  ratio: number,
  tiles: readonly Tile[],
  tile: Tile,
): JSX.Element {
  const scale = unitsPerLength(ratio);
  const { frame, border, barY } = layout;
  const view = viewAt(tile.window, frame, scale, runs);
  const bar = scaleBar(180 / scale, units);
  const barX = border.x + checkBar(units).length + 270;
  return (
    <Sheet
      key={tile.sheet}
      head={head}
      layout={layout}
      paper={paper}
      ratio={ratio}
      sheet={tile.sheet}
      sheets={tiles.length}
      legend={<PlanLegend />}
      bar={<Bar length={bar.length * scale} text={bar.text} x={barX} y={barY + 18} inks={inks} />}
    >
      {underlay !== undefined && <Framed underlay={underlay} view={view} />}
      <Scene runs={runs} view={view} units={units} inks={inks} detailed allAlike />
      <MatchLines tiles={tiles} tile={tile} frame={frame} over={OVER} />
      <g transform={`translate(${border.x + border.width - 14} ${barY + 1}) scale(0.8)`}>
        <North x={0} inks={inks} />
      </g>
    </Sheet>
  );
}

function Framed({ underlay, view }: { underlay: Underlay; view: View }) {
  const { x, y, width, height } = view.frame;
  return (
    <svg x={x} y={y} width={width} height={height} viewBox={`${x} ${y} ${width} ${height}`}>
      <title>Picture under the plan</title>
      <Under underlay={underlay} view={view} />
    </svg>
  );
}

function usualRatio(extent: Window, layout: SheetLayout, margin: number, units: UnitSystem): number {
  const smallest = smallestOf('plan', units);
  const usual = scalesOf(units).filter((scale) => scale.ratio <= smallest);
  const fitting = usual.find(({ ratio }) => {
    const scale = unitsPerLength(ratio);
    return fits(widened(extent, margin / scale), layout, scale, 1);
  });
  return fitting?.ratio ?? firstAllowed(extent, layout, margin, units, smallest);
}

/** A campus takes a smaller scale rather than more sheets than anybody lays out. */
function firstAllowed(extent: Window, layout: SheetLayout, margin: number, units: UnitSystem, from: number): number {
  const smaller = scalesOf(units).filter((scale) => scale.ratio >= from);
  const allowed = smaller.find(({ ratio }) => {
    const scale = unitsPerLength(ratio);
    return fits(widened(extent, margin / scale), layout, scale, MOST_SHEETS);
  });
  return (allowed ?? smaller.at(-1))?.ratio ?? from;
}

function fits({ left, right, low, high }: Window, { frame }: SheetLayout, scale: number, sheets: number): boolean {
  const [width, height] = [(right - left) * scale, (high - low) * scale];
  if (sheets === 1) return width <= frame.width && height <= frame.height;
  return Math.ceil(width / (frame.width - 2 * OVER)) * Math.ceil(height / (frame.height - 2 * OVER)) <= sheets;
}

function tooMany(ratio: number, units: UnitSystem): Printed {
  return {
    ok: false,
    why: `At ${scaleWord(ratio, units)} the plan of this level takes more than ${MOST_SHEETS} sheets.`,
    remedy: 'Choose a smaller scale, or print the strips of its runs.',
  };
}
