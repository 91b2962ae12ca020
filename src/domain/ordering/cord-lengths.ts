import type { Finding } from '../finding.ts';
import type { RunLayout } from '../layout/result.ts';
import type { Run, UnpricedJob } from '../model.ts';
import { tapKind } from '../takeoff/count-run.ts';
import { groupBy } from '../takeoff/group-by.ts';
import type { TakeoffLine } from '../takeoff/result.ts';
import { formatLength } from '../units/format-length.ts';
import type { Length } from '../units/length.ts';

/**
 * The shortest stock length that a drop fits into; null where none does. Stock is shortest first.
 *
 * Example: from stock of 4, 6 and 10 ft a drop of 4 ft takes 4 ft, one of 4 ft 1/16 in takes 6 ft, one of 11 ft none.
 */
export function cordLength(drop: Length, stock: readonly Length[]): Length | null {
  return stock.find((length) => length >= drop) ?? null;
}

/**
 * The cords of one run as they are ordered: by what they carry and by stock length. Without a list of stock lengths, and
 * where no stock is long enough, a cord keeps its own length: `judgeCords` names the latter.
 */
export function cordLines(run: Run, layout: RunLayout, stock: readonly Length[]): readonly TakeoffLine[] {
  const at = new Map(layout.taps.map((tap) => [tap.id, tap.at]));
  const cords = run.taps.flatMap((tap) => {
    const place = at.get(tap.id);
    if (tap.drop === null || place === undefined) return [];
    return [{ kind: tapKind(tap), length: cordLength(tap.drop, stock) ?? tap.drop, place }];
  });
  return groupBy(cords, ({ kind, length }) => `${kind} ${length}`).map((group) => ({
    item: 'drop',
    kind: group[0].kind,
    hand: null,
    length: group[0].length,
    type: run.type,
    run: run.id,
    level: run.level,
    quantity: group.length,
    unit: 'each',
    places: group.map(({ place }) => place).sort((a, b) => a - b),
  }));
}

/** Drops that no stock length reaches, each with what to do. Nothing where the job states no stock lengths. */
export function judgeCords(job: UnpricedJob, layouts: readonly RunLayout[]): readonly Finding[] {
  const stock = job.project.ordering?.cordStock ?? [];
  const longest = stock.at(-1);
  if (longest === undefined) return [];
  const layoutOf = new Map(layouts.map((layout) => [layout.run, layout]));
  return job.runs.flatMap((run) => {
    const layout = layoutOf.get(run.id);
    if (!layout?.ok) return [];
    const at = new Map(layout.taps.map((tap) => [tap.id, tap.at]));
    return run.taps.flatMap((tap): Finding[] => {
      if (tap.drop === null || cordLength(tap.drop, stock) !== null) return [];
      const say = (length: Length) => formatLength(length, job.project.units);
      const message = `The drop of tap-off ${tap.id} is ${say(tap.drop)}; the longest cord in stock is ${say(longest)}, so it is listed at its own length: add a stock length, bring the tap-off ${say(tap.drop - longest)} nearer to what it serves, or have the cord made.`;
      return [
        {
          rule: 'drop.too-long',
          severity: 'warning',
          run: run.id,
          at: at.get(tap.id) ?? null,
          message,
          source: 'cord lengths of this job',
        },
      ];
    });
  });
}
