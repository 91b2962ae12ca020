import type { BuswayType, Job, Level, Project, Run, UnpricedJob } from '../model.ts';
import { type ParentRun, runGeometry } from './geometry.ts';
import { jointLabourCost } from './joint-labour-cost.ts';

/** What one run's layout needs to know of its job, so that a run can be laid out alone. */
export interface LayoutContext {
  readonly project: Project;
  readonly level: Level | null;
  readonly type: BuswayType;
  /** The runs teed off this one, in document order. */
  readonly branches: readonly Run[];
  /** The run that this one is teed off; null for any run that is not a branch, and for a branch of an unknown run or in a ring. */
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
    branches: index.branches.get(run.id) ?? [],
    jointLabour: jointLabourCost(job.labourBook, typeOf(index, run).ratedCurrentA),
    ...originOf(job, run),
  };
}

/** What a run is made of and what it hangs off. A run of an unknown type is a fault. */
export function originOf(job: UnpricedJob, run: Run): Pick<LayoutContext, 'type' | 'parent'> {
  const index = indexOf(job);
  return { type: typeOf(index, run), parent: parentOf(index, run) };
}

interface JobIndex {
  readonly levels: ReadonlyMap<string, Level>;
  readonly types: ReadonlyMap<string, BuswayType>;
  readonly runs: ReadonlyMap<string, Run>;
  readonly branches: ReadonlyMap<string, readonly Run[]>;
}

// A job is never changed in place, so its index stays true for as long as the job lives.
const indexes = new WeakMap<UnpricedJob, JobIndex>();

function indexOf(job: UnpricedJob): JobIndex {
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
  };
  indexes.set(job, index);
  return index;
}

function typeOf(index: JobIndex, run: Run): BuswayType {
  const type = index.types.get(run.type);
  if (type === undefined) throw new Error(`run ${run.id} is of type ${run.type}, which the job does not have`);
  return type;
}

/** A branch may itself be teed off a branch: geometry follows from the top. A ring of tees has no top, and so no parent. */
function parentOf(index: JobIndex, run: Run): ParentRun | null {
  let parent: ParentRun | null = null;
  for (const ancestor of ancestorsOf(index, run)) {
    parent = { run: ancestor, type: typeOf(index, ancestor), geometry: runGeometry(ancestor, parent) };
  }
  return parent;
}

/** The runs that lead to a branch, the topmost first; none for a ring. */
function ancestorsOf(index: JobIndex, run: Run): readonly Run[] {
  const chain: Run[] = [];
  const seen = new Set([run.id]);
  for (let above = teedOff(index, run); above !== null; above = teedOff(index, above)) {
    if (seen.has(above.id)) return [];
    seen.add(above.id);
    chain.unshift(above);
  }
  return chain;
}

function teedOff(index: JobIndex, run: Run): Run | null {
  if (run.feed.kind !== 'tee' || run.feed.fromRun === null) return null;
  return index.runs.get(run.feed.fromRun) ?? null;
}
