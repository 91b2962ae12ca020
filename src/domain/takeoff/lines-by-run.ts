/** Lines of takeoff or labour by the run they belong to, in their own order; lines of the whole job are left out. */
export function linesByRun<Line extends { readonly run: string | null }>(
  lines: readonly Line[],
): ReadonlyMap<string, readonly Line[]> {
  const byRun = new Map<string, Line[]>();
  for (const line of lines) {
    if (line.run === null) continue;
    const own = byRun.get(line.run);
    if (own) own.push(line);
    else byRun.set(line.run, [line]);
  }
  return byRun;
}
