import type { Length } from './units/length.ts';

export type Severity = 'stop' | 'warning' | 'note';

/**
 * One rule of the trade, a sheet or a code that the job breaks or cannot show to hold. Data, never thrown.
 * `message` is one sentence in plain words with the number and what to do; `source` names the sheet or the clause.
 * A finding never speaks as the authority: the local code and the maker's sheet decide.
 */
export interface Finding {
  readonly rule: string;
  readonly severity: Severity;
  readonly run: string | null;
  readonly at: Length | null;
  readonly message: string;
  readonly source: string;
}

/** The fixed order of findings: run (in document order, job-wide ones last), then distance, then rule, then message. */
export function orderFindings(findings: readonly Finding[], runOrder: ReadonlyMap<string, number>): Finding[] {
  const place = (f: Finding) =>
    f.run === null ? Number.MAX_SAFE_INTEGER : (runOrder.get(f.run) ?? Number.MAX_SAFE_INTEGER);
  const text = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);
  return [...findings].sort(
    (a, b) => place(a) - place(b) || (a.at ?? -1) - (b.at ?? -1) || text(a.rule, b.rule) || text(a.message, b.message),
  );
}

/** The same with the runs in the order of their job. */
export function orderJobFindings(
  job: { readonly runs: readonly { readonly id: string }[] },
  findings: readonly Finding[],
): Finding[] {
  return orderFindings(findings, new Map(job.runs.map((run, i) => [run.id, i])));
}
