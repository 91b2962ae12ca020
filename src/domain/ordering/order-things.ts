import type { RunLayout } from '../layout/result.ts';
import type { Run, UnpricedJob } from '../model.ts';
import { groupBy } from '../takeoff/group-by.ts';
import type { TakeoffLine } from '../takeoff/result.ts';
import { METRE } from '../units/length.ts';
import { closureStrips, slotOpenings } from './closure-strips.ts';
import { cordLines } from './cord-lengths.ts';
import type { OrderItem, Ordering } from './ordering.ts';
import { isCut, rodsOf } from './rods-of.ts';

/** One line of one run, or of the whole job, as it is ordered. */
export interface OrderPart extends Omit<TakeoffLine, 'item'> {
  readonly item: OrderItem;
}

/** One thing to order for one level (null: for the whole job), with the lines it was added up from. */
export interface OrderThing extends Omit<OrderPart, 'run' | 'places'> {
  readonly parts: readonly OrderPart[];
}

/**
 * The takeoff as it is ordered, by level: cords at their next stock length, slot closure in strips where the job states
 * a stock, washers and braces where it states a rule, rods as the stock they are cut from. Levels and things in the order
 * of their first appearance; sums by level are those of the takeoff.
 */
export function orderThings(
  job: UnpricedJob,
  layouts: readonly RunLayout[],
  takeoff: readonly TakeoffLine[],
): readonly OrderThing[] {
  const { ordering } = job.project;
  const runs = new Map(job.runs.map((run) => [run.id, run]));
  const lines = takeoff.flatMap((line) => asOrdered(line, ordering, runs));
  const cords = cordsOf(job, layouts);
  const things = groupBy([...lines, ...cords], (line) =>
    JSON.stringify([line.level, line.item, line.kind, line.hand, line.length, line.type, line.unit]),
  ).map((parts): OrderThing => {
    const { run: _run, places: _places, ...first } = parts[0];
    const cut = first.item === 'rod-stock' ? rodsOf(first, takeoff, runs) : parts;
    return { ...first, quantity: sumOf(parts), parts: cut };
  });
  return ordering?.closure ? inStrips(things, job, layouts, ordering.closure) : things;
}

function sumOf(parts: readonly OrderPart[]): number {
  const sum = parts.reduce((total, part) => total + part.quantity, 0);
  return parts.every(({ unit }) => unit === 'm') ? Math.round(sum * METRE) / METRE : sum;
}

/** Rods that the cutting plan holds are bought as stock, which stands in the takeoff as a line of the whole job. */
function asOrdered(line: TakeoffLine, ordering: Ordering | null, runs: ReadonlyMap<string, Run>): readonly OrderPart[] {
  switch (line.item) {
    case 'drop':
      return [];
    case 'rod':
      return [...(isCut(line, runs) ? [] : [line]), ...washers(line, ordering)];
    case 'support':
      return [line, ...braces(line, ordering)];
    default:
      return [line];
  }
}

function washers(rod: TakeoffLine, ordering: Ordering | null): OrderPart[] {
  const each = ordering?.washersPerRod ?? 0;
  return each > 0 ? [{ ...rod, item: 'washer', length: null, quantity: rod.quantity * each }] : [];
}

function braces(support: TakeoffLine, ordering: Ordering | null): OrderPart[] {
  const every = ordering?.braceEverySupports ?? null;
  return every === null ? [] : [{ ...support, item: 'brace', quantity: Math.ceil(support.quantity / every) }];
}

function cordsOf(job: UnpricedJob, layouts: readonly RunLayout[]): OrderPart[] {
  const stock = job.project.ordering?.cordStock ?? [];
  const layoutOf = new Map(layouts.map((layout) => [layout.run, layout]));
  return job.runs.flatMap((run): readonly OrderPart[] => {
    const layout = layoutOf.get(run.id);
    return layout?.ok ? cordLines(run, layout, stock) : [];
  });
}

function inStrips(
  things: readonly OrderThing[],
  job: UnpricedJob,
  layouts: readonly RunLayout[],
  closure: NonNullable<Ordering['closure']>,
): readonly OrderThing[] {
  const layoutOf = new Map(layouts.map((layout) => [layout.run, layout]));
  const typeOf = new Map(job.types.map((type) => [type.id, type]));
  return things.map((thing) => {
    const type = typeOf.get(thing.type ?? '');
    if (thing.item !== 'slot-closure' || type === undefined) return thing;
    const openings = thing.parts.flatMap(({ run }) => {
      const layout = layoutOf.get(run ?? '');
      return layout === undefined ? [] : slotOpenings(type, layout);
    });
    const { strips } = closureStrips(openings, closure);
    return { ...thing, length: closure.stock, unit: 'each', quantity: strips };
  });
}
