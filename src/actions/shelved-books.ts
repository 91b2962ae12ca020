import { z } from 'zod';
import { demoLabourBook } from '../document/demo/demo-labour-book.ts';
import { type LabourBookDocument, labourBookSchema } from '../document/job-document.ts';
import { bookChanges } from '../document/labour-book-sheet/book-changes.ts';
import type { Reader } from '../store/database.ts';
import { refuse } from './refused.ts';

export const shelvedBookSchema = z.object({
  id: z.string(),
  name: z.string(),
  version: z.string(),
  note: z.string(),
  currency: z.string().describe('Of the crew’s rates'),
  madeBy: z.string(),
  madeAt: z.iso.datetime(),
  inThisJob: z.boolean().describe('The job’s own book says the same, word for word.'),
});
export type ShelvedBook = z.infer<typeof shelvedBookSchema>;
export const shelvedBookWholeSchema = shelvedBookSchema.extend({ document: labourBookSchema });
export type ShelvedBookWhole = z.infer<typeof shelvedBookWholeSchema>;

/** The invented book that comes with the program: to look around with, and as a form to write over. No row of the database. */
export const SHIPPED = 'shipped';
const PROGRAM = 'the program';

/** A book of the shelf as it is kept, or the one that comes with the program; refused where there is none of this id. */
export async function shelved(reader: Reader, id: string): Promise<Row> {
  if (id === SHIPPED) return shippedRow();
  return (
    (await reader.shelvedLabourBook.findUnique({ where: { id } })) ??
    refuse({ code: 'not-found', what: 'labour book on the shelf' })
  );
}

type Row = Omit<NonNullable<Awaited<ReturnType<Reader['shelvedLabourBook']['findUnique']>>>, 'document'> & {
  readonly document: unknown;
};

function shippedRow(): Row {
  const document = demoLabourBook();
  return {
    id: SHIPPED,
    name: 'The book that comes with the program,',
    version: document.version,
    note: 'Invented: nobody’s hours.',
    currency: NO_CURRENCY,
    document,
    madeBy: PROGRAM,
    madeAt: new Date(0),
  };
}

/** ISO 4217: invented rates are in no money, and so suit any. */
export const NO_CURRENCY = 'XXX';

/** The book itself, checked as it comes out of the database. */
export function bookOf(row: { readonly document: unknown }): LabourBookDocument {
  return labourBookSchema.parse(row.document);
}

/** What is told of it, beside the job's own book. */
export function viewOf(row: Row, names: ReadonlyMap<string, string>, own: LabourBookDocument | null): ShelvedBook {
  const { id, name, version, note, currency, madeBy, madeAt } = row;
  const isSame = own !== null && bookChanges(own, bookOf(row), { units: 'metric', currency }).length === 0;
  return {
    id,
    name,
    version,
    note,
    currency,
    madeBy: names.get(madeBy) ?? 'somebody who left',
    madeAt: madeAt.toISOString(),
    inThisJob: isSame,
  };
}

/** Who kept them, by id. */
export async function namesOf(
  reader: Reader,
  rows: readonly { readonly madeBy: string }[],
): Promise<ReadonlyMap<string, string>> {
  const ids = [...new Set(rows.map(({ madeBy }) => madeBy))];
  const users = await reader.user.findMany({ where: { id: { in: ids } }, select: { id: true, name: true } });
  return new Map([[PROGRAM, PROGRAM], ...users.map(({ id, name }) => [id, name] as const)]);
}
