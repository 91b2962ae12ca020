import { METRE } from '../units/length.ts';
import { groupBy } from './group-by.ts';
import type { TakeoffLine } from './result.ts';

/** A line over several runs, with the lines it was added up from. Its own `places` are empty: they belong to the parts. */
export interface SummedLine extends TakeoffLine {
  readonly parts: readonly TakeoffLine[];
}

/**
 * Lines of the same thing (item, kind, hand, length, busway type, unit) added up by run, by level or over the whole job,
 * in the order of their first appearance.
 *
 * Example: 48 runs with four joints each and two clamps a joint are one line `clamp`, quantity 384, by `job`.
 */
export function sumTakeoff(lines: readonly TakeoffLine[], by: 'run' | 'level' | 'job'): readonly SummedLine[] {
  const scoped = lines.map((line) => ({
    line,
    run: by === 'run' ? line.run : null,
    level: by === 'job' ? null : line.level,
  }));
  const groups = groupBy(scoped, ({ line, run, level }) =>
    JSON.stringify([run, level, line.item, line.kind, line.hand, line.length, line.type, line.unit]),
  );
  return groups.map((group) => {
    const parts = group.map(({ line }) => line);
    const { run, level } = group[0];
    return { ...group[0].line, run, level, quantity: sumQuantities(parts), places: [], parts };
  });
}

/** Whole counts stay whole, and metres stay on the grid of 1/80 mm that each part stands on. */
function sumQuantities(parts: readonly TakeoffLine[]): number {
  const sum = parts.reduce((total, part) => total + part.quantity, 0);
  return parts.every((part) => part.item === 'slot-closure') ? Math.round(sum * METRE) / METRE : sum;
}
