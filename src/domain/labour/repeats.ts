import type { Level, Run } from '../model.ts';

/**
 * Which repeat each run is: its own place, or its level's, in the order of work – level order, then the order of the
 * document. `sound` are the runs with a sound layout, in document order: nobody learns from what is not built.
 */
export function repeatsOf(
  levels: readonly Level[],
  sound: readonly Run[],
  over: 'run' | 'level',
): ReadonlyMap<string, number> {
  const levelOrder = new Map(levels.map((level) => [level.id, level.order]));
  const orderOf = (level: string) => levelOrder.get(level) ?? 0;
  const runs = [...sound].sort((a, b) => orderOf(a.level) - orderOf(b.level));
  const levelRepeats = new Map([...new Set(runs.map((run) => run.level))].map((level, i) => [level, i + 1]));
  return new Map(runs.map((run, i) => [run.id, over === 'run' ? i + 1 : (levelRepeats.get(run.level) ?? 1)]));
}
