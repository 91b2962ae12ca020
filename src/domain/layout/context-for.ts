import type { BuswayType, Job, Level, Project, Run } from '../model.ts';
import { type ParentRun, runGeometry } from './geometry.ts';
import { jointLabourCost } from './joint-labour-cost.ts';

/** What one run's layout needs to know of its job, so that a run can be laid out alone. */
export interface LayoutContext {
  readonly project: Project;
  readonly level: Level | null;
  readonly type: BuswayType;
  /** The runs teed off this one, in document order. */
  readonly branches: readonly Run[];
  /** The run that this one is teed off; null for any run that is not a branch, and for a branch of an unknown run. */
  readonly parent: ParentRun | null;
  /** Labour to make up one joint, minor units; 0 without a labour book or a crew. */
  readonly jointLabour: number;
}

/** The context of one run. A run of an unknown type is a fault: the document must have been checked. */
export function contextFor(job: Job, run: Run): LayoutContext {
  const index = indexOf(job);
  return {
    project: job.project,
    level: index.levels.get(run.level) ?? null,
    type: typeOf(index, run),
    branches: index.branches.get(run.id) ?? [],
    parent: parentOf(index, run, new Set()),
    jointLabour: index.jointLabour,
  };
}

interface JobIndex {
  readonly levels: ReadonlyMap<string, Level>;
  readonly types: ReadonlyMap<string, BuswayType>;
  readonly runs: ReadonlyMap<string, Run>;
  readonly branches: ReadonlyMap<string, readonly Run[]>;
  readonly jointLabour: number;
}

// A job is never changed in place, so its index stays true for as long as the job lives.
const indexes = new WeakMap<Job, JobIndex>();

function indexOf(job: Job): JobIndex {
  const known = indexes.get(job);
  if (known !== undefined) return known;
  const branches = new Map<string, Run[]>();
  for (const run of job.runs) {
    if (run.feed.kind !== 'tee' || run.feed.fromRun === null) continue;
    const siblings = branches.get(run.feed.fromRun);
    if (siblings === undefined) branches.set(run.feed.fromRun, [run]);
    else siblings.push(run);
  }
  const index = {
    levels: new Map(job.levels.map((level) => [level.id, level])),
    types: new Map(job.types.map((type) => [type.id, type])),
    runs: new Map(job.runs.map((run) => [run.id, run])),
    branches,
    jointLabour: jointLabourCost(job.labourBook),
  };
  indexes.set(job, index);
  return index;
}

function typeOf(index: JobIndex, run: Run): BuswayType {
  const type = index.types.get(run.type);
  if (type === undefined) throw new Error(`run ${run.id} is of type ${run.type}, which the job does not have`);
  return type;
}

/** A branch may itself be teed off a branch; `seen` ends a ring of tees, which has no geometry. */
function parentOf(index: JobIndex, run: Run, seen: ReadonlySet<string>): ParentRun | null {
  if (run.feed.kind !== 'tee' || run.feed.fromRun === null || seen.has(run.id)) return null;
  const parent = index.runs.get(run.feed.fromRun);
  if (parent === undefined) return null;
  const grandparent = parentOf(index, parent, new Set([...seen, run.id]));
  return { run: parent, type: typeOf(index, parent), geometry: runGeometry(parent, grandparent) };
}
