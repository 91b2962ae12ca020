import type { RunLayout } from '../layout/result.ts';
import type { BuswayType } from '../model.ts';
import { type CuttingPlan, planCuts } from '../takeoff/cutting-plan.ts';
import type { Length } from '../units/length.ts';

/** Strips are cheap: a plan that is a strip off is no loss, and a job of many levels has many plans. */
const MOST_STEPS = 200_000;

/** A stretch of slot that stands open between tap-off boxes or up to a fitting or an end. */
export interface Opening {
  readonly from: Length;
  readonly to: Length;
}

/**
 * The open stretches of a run's slot, in order: straight sections that stand one after the other are one slot, a fitting
 * has none, and a box covers half its length on each side of its tap-off. A box of unknown length covers nothing.
 *
 * Source: usable slot less what the tap-offs cover, common practice. Whether a strip may lie across a joint is the
 * sheet's to say.
 * Example: 20 ft of slot with boxes of 1 ft at 5 and 10 ft are open from 0 to 4.5, 5.5 to 9.5 and 10.5 to 20 ft.
 */
export function slotOpenings(type: BuswayType, layout: RunLayout): readonly Opening[] {
  const half = (type.tap.boxLength ?? 0) / 2;
  const boxes = layout.taps
    .map(({ at }) => ({ from: Math.round(at - half), to: Math.round(at - half) + 2 * half }))
    .sort((a, b) => a.from - b.from);
  return straightParts(layout).flatMap((part) => openIn(part, half === 0 ? [] : boxes));
}

function straightParts({ pieces }: RunLayout): Opening[] {
  const parts: { from: Length; to: Length }[] = [];
  for (const piece of pieces) {
    if (piece.kind !== 'stock' && piece.kind !== 'cut') continue;
    const last = parts.at(-1);
    if (last?.to === piece.from) last.to = piece.to;
    else parts.push({ from: piece.from, to: piece.to });
  }
  return parts;
}

function openIn(part: Opening, boxes: readonly Opening[]): Opening[] {
  const open: Opening[] = [];
  let from = part.from;
  for (const box of boxes) {
    if (box.to <= from || box.from >= part.to) continue;
    if (box.from > from) open.push({ from, to: box.from });
    from = box.to;
  }
  if (from < part.to) open.push({ from, to: part.to });
  return open;
}

/**
 * How strips of one stock length are cut to close the openings: an opening longer than the stock takes whole strips end to
 * end and a rest, and all that is shorter goes through the cutting plan. `strips` has the waste on top, rounded up.
 *
 * Example: openings of 9, 4 and 4 ft from stock of 8 ft: one whole strip, and 4 + 4 and 1 from two more, so three.
 */
export function closureStrips(
  openings: readonly Opening[],
  { stock, wastePercent }: { readonly stock: Length; readonly wastePercent: number },
): { readonly plan: CuttingPlan; readonly strips: number } {
  const pieces = openings.flatMap(({ from, to }) => {
    const length = to - from;
    const whole = Math.floor(length / stock);
    const rest = length - whole * stock;
    return [...(whole > 0 ? [{ length: stock, count: whole }] : []), ...(rest > 0 ? [{ length: rest, count: 1 }] : [])];
  });
  const plan = planCuts(stock, pieces, MOST_STEPS);
  return { plan, strips: Math.ceil(plan.sticks * (1 + wastePercent / 100) - 1e-9) };
}

/** How many openings there are of each length, longest first: the strips as they are cut on the floor. */
export function stripLengths(
  openings: readonly Opening[],
): readonly { readonly length: Length; readonly count: number }[] {
  const counts = new Map<Length, number>();
  for (const { from, to } of openings) counts.set(to - from, (counts.get(to - from) ?? 0) + 1);
  return [...counts].map(([length, count]) => ({ length, count })).sort((a, b) => b.length - a.length);
}
