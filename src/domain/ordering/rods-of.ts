import type { Run } from '../model.ts';
import type { TakeoffLine } from '../takeoff/result.ts';

/** The lines of rods that are cut from one line of rod stock: same diameter, same stock length, and they fit into it. */
export function rodsOf(
  stock: Pick<TakeoffLine, 'kind' | 'length'>,
  lines: readonly TakeoffLine[],
  runs: ReadonlyMap<string, Pick<Run, 'rodStock'>>,
): readonly TakeoffLine[] {
  return lines.filter(
    (line) =>
      line.item === 'rod' && line.kind === stock.kind && isCut(line, runs) && stockOf(line, runs) === stock.length,
  );
}

/** Whether the cutting plan holds a line of rods; those of unknown length and those longer than their stock it does not. */
export function isCut(line: TakeoffLine, runs: ReadonlyMap<string, Pick<Run, 'rodStock'>>): boolean {
  return line.length !== null && line.length > 0 && line.length <= stockOf(line, runs);
}

function stockOf({ run }: TakeoffLine, runs: ReadonlyMap<string, Pick<Run, 'rodStock'>>): number {
  return runs.get(run ?? '')?.rodStock ?? 0;
}
