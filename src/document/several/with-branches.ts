import type { RunDocument } from '../schema/run.ts';

/** The runs of these labels in document order, with every branch that hangs off them when it is asked for. */
export function chosenRuns(
  runs: readonly RunDocument[],
  labels: readonly string[],
  branches: boolean,
): readonly RunDocument[] {
  const chosen = new Set(labels);
  let grown = branches;
  while (grown) {
    const more = runs.filter((run) => !chosen.has(run.id) && chosen.has(parentOf(run) ?? ''));
    for (const run of more) chosen.add(run.id);
    grown = more.length > 0;
  }
  return runs.filter((run) => chosen.has(run.id));
}

/** The run that a branch is teed off; null for any other run. */
export function parentOf(run: RunDocument): string | null {
  return run.feed.kind === 'tee' ? (run.feed.fromRun ?? null) : null;
}
