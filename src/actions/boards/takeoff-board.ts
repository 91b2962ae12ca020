import type { Counted } from '../../domain/figures.ts';
import type { Finding } from '../../domain/finding.ts';
import type { RunLayout } from '../../domain/layout/result.ts';
import type { BuswayType, Job } from '../../domain/model.ts';
import { rodsOf } from '../../domain/ordering/rods-of.ts';
import { judgeTakeoff } from '../../domain/takeoff/judge-takeoff.ts';
import { planRods, type RodPlan } from '../../domain/takeoff/plan-rods.ts';
import type { TakeoffItem, TakeoffLine } from '../../domain/takeoff/result.ts';
import { type SummedLine, sumTakeoff } from '../../domain/takeoff/sum-takeoff.ts';
import { runMarks } from '../../store/run-marks.ts';
import type { Context, Viewer } from '../context.ts';
import { countedJob } from '../figures.ts';
import { type JobHeading, jobHeading } from '../job-heading.ts';
import { type MarksOf, marksIn } from './order-board.ts';

export type SummedBy = 'job' | 'level' | 'run';

export interface TakeoffBoard {
  readonly heading: JobHeading;
  /** One level alone, or the whole job. */
  readonly lines: readonly SummedLine[];
  /** Line by line as counted, for a file. */
  readonly counted: readonly TakeoffLine[];
  readonly levels: readonly { readonly id: string; readonly name: string }[];
  readonly types: ReadonlyMap<string, BuswayType>;
  readonly rods: readonly RodPlan[];
  /** Runs without a sound layout: nothing of them is counted. */
  readonly leftOut: readonly string[];
  /** What cannot be counted as it stands. */
  readonly findings: readonly Finding[];
  readonly marksOf: MarksOf;
}

/** The order lines of a job, added up over the job, by level or by run, each with the lines it was added up from. */
export async function takeoffBoard(
  context: Context,
  viewer: Viewer,
  projectId: string,
  asked: { readonly by: SummedBy; readonly level: string },
): Promise<TakeoffBoard> {
  const heading = await jobHeading(context, viewer, projectId);
  const { job, counted: all } = await countedJob(context.database.db, projectId);
  const counted = asked.level === '' ? all.takeoff : all.takeoff.filter((line) => line.level === asked.level);
  return {
    heading,
    counted,
    lines: linesOf(job, all, counted, asked),
    levels: inWorkOrder(job.levels),
    types: new Map(job.types.map((type) => [type.id, type])),
    rods: planRods(job, all.layouts),
    leftOut: all.layouts.filter((layout: RunLayout) => !layout.ok).map((layout) => layout.run),
    findings: judgeTakeoff(job, all.layouts),
    marksOf: marksIn(job.runs, all.layouts, await runMarks(context.database.db, projectId)),
  };
}

/** The lines that were asked for last: who turns the pages of a job of thousands of runs asks for the same ones again. */
const kept = new WeakMap<Counted, { readonly asked: string; readonly lines: readonly SummedLine[] }>();

function linesOf(
  job: Job,
  all: Counted,
  counted: readonly TakeoffLine[],
  { by, level }: { readonly by: SummedBy; readonly level: string },
): readonly SummedLine[] {
  const asked = `${by} ${level}`;
  const known = kept.get(all);
  if (known?.asked === asked) return known.lines;
  const runs = new Map(job.runs.map((run) => [run.id, run]));
  const lines = inOrder(sumTakeoff(counted, by), inWorkOrder(job.levels)).map((line) =>
    line.item === 'rod-stock' ? { ...line, parts: rodsOf(line, all.takeoff, runs) } : line,
  );
  kept.set(all, { asked, lines });
  return lines;
}

function inWorkOrder<T extends { readonly order: number }>(levels: readonly T[]): T[] {
  return [...levels].sort((a, b) => a.order - b.order);
}

const ITEMS: readonly TakeoffItem[] = [
  'section',
  'elbow',
  'tee',
  'clamp',
  'contact-set',
  'bolt',
  'end-feed',
  'end-cap',
  'slot-closure',
  'support',
  'rod',
  'rod-stock',
  'nut',
  'anchor',
  'fire-seal',
  'tap',
  'drop',
  'label',
  'extra',
];

/** Levels in the order of work, what belongs to none of them last; within one run by run, item by item, longest first. */
function inOrder(lines: readonly SummedLine[], levels: readonly { readonly id: string }[]): SummedLine[] {
  const place = new Map(levels.map((level, index) => [level.id, index]));
  const runs = new Map<string | null, number>();
  for (const line of lines) if (!runs.has(line.run)) runs.set(line.run, runs.size);
  const levelOf = (line: SummedLine) => place.get(line.level ?? '') ?? levels.length;
  const runOf = (line: SummedLine) => (line.run === null ? runs.size : (runs.get(line.run) ?? 0));
  return [...lines].sort(
    (a, b) =>
      levelOf(a) - levelOf(b) ||
      runOf(a) - runOf(b) ||
      ITEMS.indexOf(a.item) - ITEMS.indexOf(b.item) ||
      (b.length ?? 0) - (a.length ?? 0),
  );
}
