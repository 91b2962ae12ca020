import type { OrderPart, OrderThing } from '../../domain/ordering/order-things.ts';
import type { OrderItem } from '../../domain/ordering/ordering.ts';
import type { MarkedPlace } from '../../domain/ordering/place-marks.ts';
import { rodsOf } from '../../domain/ordering/rods-of.ts';
import type { Length } from '../../domain/units/length.ts';
import { runMarks } from '../../store/run-marks.ts';
import type { Context, Viewer } from '../context.ts';
import { figuresOf } from '../figures.ts';
import { type JobHeading, jobHeading } from '../job-heading.ts';
import { marksIn, thingsOf } from './order-board.ts';

/** A line as an address names it; an empty text is what the line does not have, and no level is all of them. */
export interface AskedLine {
  readonly of: 'takeoff' | 'order';
  readonly item: OrderItem;
  readonly kind: string;
  readonly hand: string;
  readonly length: string;
  readonly type: string;
  readonly level: string;
  readonly run: string;
}

export interface PlacesBoard {
  readonly heading: JobHeading;
  readonly quantity: number;
  readonly unit: string;
  readonly total: number;
  readonly rows: readonly {
    readonly run: string;
    readonly runId: string | null;
    readonly mark: string;
    readonly at: Length;
  }[];
}

/** Some of the places that a line was counted from, in document order. */
export async function placesBoard(
  context: Context,
  viewer: Viewer,
  projectId: string,
  asked: AskedLine,
  page: { readonly first: number; readonly count: number },
): Promise<PlacesBoard> {
  const heading = await jobHeading(context, viewer, projectId);
  const { db } = context.database;
  const computed = await figuresOf(db, projectId);
  const lines: readonly (OrderPart | OrderThing)[] =
    asked.of === 'takeoff' ? computed.figures.takeoff : thingsOf(computed);
  const runs = new Map(computed.job.runs.map((run) => [run.id, run]));
  const fitting = lines.filter((line) => fits(asked, line));
  const parts = fitting
    .flatMap((line): readonly OrderPart[] => {
      if ('parts' in line) return line.parts;
      return line.item === 'rod-stock' ? rodsOf(line, computed.figures.takeoff, runs) : [line];
    })
    .filter((part) => part.run !== null && (asked.run === '' || part.run === asked.run));
  const marksOf = marksIn(computed.job.runs, computed.figures.layouts, await runMarks(db, projectId));
  const rows = slice(parts, page, marksOf);
  const ids = await db.run.findMany({
    where: { projectId, key: { in: [...new Set(rows.map(({ run }) => run))] } },
    select: { id: true, key: true },
  });
  const idOf = new Map(ids.map(({ id, key }) => [key, id]));
  return {
    heading,
    quantity: (asked.run === '' ? fitting : parts).reduce((sum, { quantity }) => sum + quantity, 0),
    unit: fitting[0]?.unit ?? '',
    total: parts.reduce((sum, { places }) => sum + places.length, 0),
    rows: rows.map((row) => ({ ...row, runId: idOf.get(row.run) ?? null })),
  };
}

function fits(asked: AskedLine, line: OrderPart | OrderThing): boolean {
  return (
    line.item === asked.item &&
    (line.kind ?? '') === asked.kind &&
    (line.hand ?? '') === asked.hand &&
    String(line.length ?? '') === asked.length &&
    (line.type ?? '') === asked.type &&
    (asked.level === '' || line.level === asked.level)
  );
}

/** Marks are worked for the runs on the page alone. */
function slice(
  parts: readonly OrderPart[],
  { first, count }: { readonly first: number; readonly count: number },
  marksOf: (part: OrderPart) => readonly MarkedPlace[],
): { run: string; mark: string; at: Length }[] {
  const rows: { run: string; mark: string; at: Length }[] = [];
  let before = 0;
  for (const part of parts) {
    const last = before + part.places.length;
    if (last > first && before < first + count)
      for (const [index, { mark, at }] of marksOf(part).entries())
        if (before + index >= first && before + index < first + count) rows.push({ run: part.run ?? '', mark, at });
    before = last;
  }
  return rows;
}
