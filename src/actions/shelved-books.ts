import { z } from 'zod';
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

/** A book of the shelf as it is kept; refused where there is none of this id. */
export async function shelved(reader: Reader, id: string) {
  return (
    (await reader.shelvedLabourBook.findUnique({ where: { id } })) ??
    refuse({ code: 'not-found', what: 'labour book on the shelf' })
  );
}

type Row = Awaited<ReturnType<typeof shelved>>;

/** The book itself, checked as it comes out of the database. */
export function bookOf(row: { readonly document: unknown }): LabourBookDocument {
  return labourBookSchema.parse(row.document);
}

/** What is told of it, beside the job's own book. */
export function viewOf(
  row: Omit<Row, 'document'> & { readonly document: unknown },
  names: ReadonlyMap<string, string>,
  own: LabourBookDocument | null,
): ShelvedBook {
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
  return new Map(users.map(({ id, name }) => [id, name]));
}
