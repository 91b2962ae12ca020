import type { RunLayout } from '../layout/result.ts';
import type { Job } from '../model.ts';

/**
 * Which repeat each run is: its own place, or its level's, in the order of work – level order, then the order of the
 * document. Only runs with a sound layout count, and only levels that have one: nobody learns from what is not built.
 */
export function repeatsOf(job: Job, layouts: readonly RunLayout[], over: 'run' | 'level'): ReadonlyMap<string, number> {
  const sound = new Set(layouts.filter((layout) => layout.ok).map((layout) => layout.run));
  const levelOrder = new Map(job.levels.map((level) => [level.id, level.order]));
  const orderOf = (level: string) => levelOrder.get(level) ?? 0;
  const runs = job.runs.filter((run) => sound.has(run.id)).sort((a, b) => orderOf(a.level) - orderOf(b.level));
  const levelRepeats = new Map([...new Set(runs.map((run) => run.level))].map((level, i) => [level, i + 1]));
  return new Map(runs.map((run, i) => [run.id, over === 'run' ? i + 1 : (levelRepeats.get(run.level) ?? 1)]));
}
