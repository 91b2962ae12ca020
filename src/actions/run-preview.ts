import type { Fault } from '../document/fault.ts';
import type { JobDocument, RunDocument } from '../document/job-document.ts';
import { parseJobDocument } from '../document/parse-job-document.ts';
import { toModel } from '../document/to-model.ts';
import { orderFindings } from '../domain/finding.ts';
import { contextFor } from '../domain/layout/context-for.ts';
import { layoutRun } from '../domain/layout/layout-run.ts';
import { pathPoints } from '../domain/layout/path-points.ts';
import type { PathPoint, RunLayout } from '../domain/layout/result.ts';
import type { Run } from '../domain/model.ts';
import { runsBeside, type TypedRun } from '../store/runs-beside.ts';
import type { Context, Viewer } from './context.ts';
import { faceOffsAsTyped } from './face-offs.ts';
import { reach } from './reach.ts';

/** A run laid out as it is typed. Nothing is written. */
export interface DrawnRun {
  readonly run: Run;
  readonly layout: RunLayout;
  /** The run that it is teed from, for the plan. */
  readonly parent: { readonly run: Run; readonly path: readonly PathPoint[] } | null;
}

export type RunPreview =
  | { readonly ok: true; readonly drawn: DrawnRun; readonly mayMoney: boolean }
  /** Paths are within the run, as the form names its fields. */
  | { readonly ok: false; readonly faults: readonly Fault[] };

/**
 * Checks and lays out one run as typed, with what it depends on. `job` is the job without its runs. Faults of other runs
 * are left out unless the typed one makes them: saving tells the rest.
 */
export async function previewRun(
  context: Context,
  viewer: Viewer,
  projectId: string,
  typed: TypedRun,
  job: JobDocument,
): Promise<RunPreview> {
  const { db } = context.database;
  const { may } = await reach(db, viewer, projectId, 'design');
  const beside = await runsBeside(db, projectId, typed);
  if (beside.isTaken) return { ok: false, faults: [taken(typed.document.id)] };
  const document = { ...job, runs: [typed.document, ...beside.runs.map((run) => alone(run, typed))] };
  const parsed = parseJobDocument(withoutMoneyRows(document));
  const faults = parsed.ok ? [] : parsed.faults.flatMap((fault) => ownFault(fault, document));
  if (faults.length > 0) return { ok: false, faults };
  const drawn = draw(document, typed.document.id);
  const across = await faceOffsAsTyped(db, projectId, typed, withoutMoneyRows(document), drawn.layout);
  const findings =
    across.length === 0 ? drawn.layout.findings : orderFindings([...drawn.layout.findings, ...across], new Map());
  return { ok: true, drawn: { ...drawn, layout: { ...drawn.layout, findings } }, mayMoney: may('money') };
}

function taken(label: string): Fault {
  return {
    path: 'id',
    message: `The job has a run ${label} already.`,
    remedy: 'Give this one another label, or change that one.',
  };
}

/** A neighbour with the names that lead on to runs that are not read here taken out; its way to the typed run stays. */
function alone(run: RunDocument, { key, document }: TypedRun): RunDocument {
  const { pairedRun, ...rest } = run;
  const follows = (name: string | undefined) => (name !== undefined && name === key ? document.id : name);
  const pair = follows(pairedRun);
  const fromRun = follows(run.feed.fromRun);
  return {
    ...rest,
    ...(pair === document.id ? { pairedRun: pair } : {}),
    feed: fromRun === undefined ? run.feed : { ...run.feed, fromRun },
  };
}

/** What is added by hand and the bid say nothing about a run. */
function withoutMoneyRows({ extras: _extras, bid: _bid, ...document }: JobDocument): JobDocument {
  return document;
}

function ownFault(fault: Fault, document: JobDocument): Fault[] {
  const [, index, rest = ''] = /^runs\[(\d+)\]\.?(.*)$/.exec(fault.path) ?? [];
  if (index === '0') return [{ ...fault, path: rest }];
  const other = index === undefined ? undefined : document.runs[Number(index)];
  if (other === undefined) return [];
  return [{ ...fault, path: 'id', message: `Run ${other.id}, which hangs on this one: ${fault.message}` }];
}

function draw(document: JobDocument, label: string): DrawnRun {
  const job = toModel(withoutMoneyRows(document));
  const run = job.runs.find((one) => one.id === label);
  if (run === undefined) throw new Error(`run ${label} left the document that it was put into`);
  const own = contextFor(job, run);
  const { parent } = own;
  return {
    run,
    layout: layoutRun(run, own),
    parent:
      parent === null
        ? null
        : { run: parent.run, path: pathPoints(parent.geometry, Math.max(0, parent.geometry.length)) },
  };
}
