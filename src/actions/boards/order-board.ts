import type { Finding } from '../../domain/finding.ts';
import type { RunLayout } from '../../domain/layout/result.ts';
import type { BuswayType, Job, Level, Run } from '../../domain/model.ts';
import { type Opening, slotOpenings, stripLengths } from '../../domain/ordering/closure-strips.ts';
import { judgeCords } from '../../domain/ordering/cord-lengths.ts';
import { crewTools, firstTools, type ToolLine } from '../../domain/ordering/crew-tools.ts';
import type { Manning } from '../../domain/ordering/need-dates.ts';
import { type Order, orderList } from '../../domain/ordering/order-list.ts';
import { type OrderThing, orderThings } from '../../domain/ordering/order-things.ts';
import type { Ordering } from '../../domain/ordering/ordering.ts';
import { type MarkedPlace, placeMarks, type RunMarks } from '../../domain/ordering/place-marks.ts';
import { type Spares, sparesOf } from '../../domain/ordering/spares.ts';
import { planCrews } from '../../domain/schedule/plan-crews.ts';
import type { TakeoffLine } from '../../domain/takeoff/result.ts';
import { runMarks } from '../../store/run-marks.ts';
import type { Context, Viewer } from '../context.ts';
import { getCrewPlan } from '../crew-plans.ts';
import { figuresOf, type JobFigures } from '../figures.ts';
import { type JobHeading, jobHeading } from '../job-heading.ts';

export interface OrderBoard {
  readonly heading: JobHeading;
  readonly levels: readonly Level[];
  readonly types: ReadonlyMap<string, BuswayType>;
  readonly ordering: Ordering | null;
  readonly manned: boolean;
  /** The labour book whose hours the need dates rest on; null without dates. */
  readonly labourBook: string | null;
  readonly orders: readonly Order[];
  readonly spares: Spares;
  readonly cords: readonly Finding[];
  /** Strips that close the slot, as they are cut: of the level asked for, or of the job. */
  readonly strips: ReturnType<typeof stripLengths>;
  readonly tools: readonly ToolLine[];
  /** False while the tools are a suggestion. */
  readonly toolsStated: boolean;
  readonly leftOut: readonly string[];
  readonly marksOf: MarksOf;
}

/** The marks of the places that a line of a run was counted from. */
export type MarksOf = (
  part: Pick<TakeoffLine, 'run' | 'places'> & { item: OrderThing['item'] },
) => readonly MarkedPlace[];

/** What to order by floor and need date, with spares, cords and the crews' tools. No prices. */
export async function orderBoard(
  context: Context,
  viewer: Viewer,
  projectId: string,
  asked: { readonly level: string },
): Promise<OrderBoard> {
  const heading = await jobHeading(context, viewer, projectId);
  const { db } = context.database;
  const computed = await figuresOf(db, projectId);
  const { figures, job } = computed;
  const { document } = await getCrewPlan(context, viewer, projectId);
  const marks = await runMarks(db, projectId);
  const { ordering } = job.project;
  const things = thingsOf(computed);
  const spares = sparesOf(things, ordering?.spares ?? []);
  const manning = document === null ? null : manningOf(document, computed);
  const levelOf = new Map(job.runs.map((run) => [run.id, run.level]));
  const orders = orderList(things, spares.lines, {
    levels: job.levels,
    ordering,
    manning,
    byOwner: job.bid?.ownerFurnished ?? [],
  });
  return {
    heading,
    levels: [...job.levels].sort((a, b) => a.order - b.order),
    types: new Map(job.types.map((type) => [type.id, type])),
    ordering,
    manned: manning !== null,
    labourBook: manning === null ? null : (job.labourBook?.version ?? null),
    orders: asked.level === '' ? orders : orders.filter(({ level }) => level === asked.level),
    spares,
    cords: judgeCords(job, figures.layouts).filter(
      ({ run }) => asked.level === '' || levelOf.get(run ?? '') === asked.level,
    ),
    strips: stripLengths(openingsOf(job, figures.layouts, asked.level)),
    tools: crewTools(ordering?.tools ?? firstTools(job), document),
    toolsStated: ordering?.tools != null,
    leftOut: figures.layouts.filter((layout) => !layout.ok).map((layout) => layout.run),
    marksOf: marksIn(job.runs, figures.layouts, marks),
  };
}

function openingsOf(job: Job, layouts: readonly RunLayout[], level: string): readonly Opening[] {
  const typeOf = new Map(job.types.map((type) => [type.id, type]));
  const layoutOf = new Map(layouts.map((layout) => [layout.run, layout]));
  return job.runs.flatMap((run): readonly Opening[] => {
    const [type, layout] = [typeOf.get(run.type), layoutOf.get(run.id)];
    if (type === undefined || !layout?.ok || (level !== '' && run.level !== level)) return [];
    return slotOpenings(type, layout);
  });
}

/** What is ordered changes with the design alone, and is kept as long as its figures are. */
const kept = new WeakMap<JobFigures, readonly OrderThing[]>();

export function thingsOf(computed: JobFigures): readonly OrderThing[] {
  const known = kept.get(computed);
  if (known !== undefined) return known;
  const { job, figures } = computed;
  const things = orderThings(job, figures.layouts, figures.takeoff);
  kept.set(computed, things);
  return things;
}

export function marksIn(
  runs: readonly Run[],
  layouts: readonly RunLayout[],
  marks: ReadonlyMap<string, RunMarks>,
): MarksOf {
  const runOf = new Map(runs.map((run) => [run.id, run]));
  const layoutOf = new Map(layouts.map((layout) => [layout.run, layout]));
  return (part) => {
    const run = runOf.get(part.run ?? '');
    const layout = layoutOf.get(part.run ?? '');
    if (run === undefined || layout === undefined) return [];
    return placeMarks(part, run, layout, marks.get(run.id) ?? null);
  };
}

type Plan = NonNullable<Awaited<ReturnType<typeof getCrewPlan>>['document']>;

function manningOf({ weekdays, holidays, ...rest }: Plan, { job, figures }: JobFigures): Manning {
  const plan = { ...rest, calendar: { weekdays, holidays } };
  return { plan, schedule: figures.labour === null ? null : planCrews(plan, job.levels, figures.labour.lines) };
}
