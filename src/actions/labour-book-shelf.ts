import { z } from 'zod';
import { type LabourBookDocument, projectSchema } from '../document/job-document.ts';
import { isUniqueViolation, type Tx } from '../store/database.ts';
import { audit } from './audit.ts';
import type { Context, Viewer } from './context.ts';
import { changeDesign } from './designs.ts';
import { readBook, setBook } from './labour-books.ts';
import { once, type Submission } from './once.ts';
import { cut, type Listed, type PageQuery } from './paging.ts';
import { reach } from './reach.ts';
import { refuse } from './refused.ts';
import {
  bookOf,
  NO_CURRENCY,
  namesOf,
  SHIPPED,
  type ShelvedBook,
  type ShelvedBookWhole,
  shelved,
  viewOf,
} from './shelved-books.ts';

export const keepBookSchema = z.strictObject({
  name: z.string().trim().min(1).max(100).describe('What the company calls the book, as "Shop hours"'),
  version: z.string().trim().min(1).max(200).describe('The version it is kept as; the job’s own copy takes it too'),
  note: z.string().trim().max(1_000).default('').describe('What changed, and where it was learned'),
});

/** The company's labour books, newest first. Whoever may see the money of this job may see them: they are the office's. */
export async function listShelf(
  context: Context,
  viewer: Viewer,
  projectId: string,
  page: PageQuery,
): Promise<Listed<ShelvedBook>> {
  const { db } = context.database;
  await reach(db, viewer, projectId, 'money');
  const [rows, total, own] = await Promise.all([
    db.shelvedLabourBook.findMany({ orderBy: [{ madeAt: 'desc' }, { id: 'desc' }], ...cut(page) }),
    db.shelvedLabourBook.count(),
    readBook(db, projectId),
  ]);
  const names = await namesOf(db, rows);
  return { items: rows.map((row) => viewOf(row, names, own.document)), total, page: page.page, limit: page.limit };
}

/** One book of the shelf with all that it says. */
export async function getShelved(
  context: Context,
  viewer: Viewer,
  projectId: string,
  id: string,
): Promise<ShelvedBookWhole> {
  const { db } = context.database;
  await reach(db, viewer, projectId, 'money');
  const row = await shelved(db, id);
  const { document: own } = await readBook(db, projectId);
  return { ...viewOf(row, await namesOf(db, [row]), own), document: bookOf(row) };
}

/** Keeps the job's book on the shelf, whole, under a name and version that nothing later changes. */
export async function keepOnShelf(
  context: Context,
  viewer: Viewer,
  projectId: string,
  asked: z.infer<typeof keepBookSchema>,
  submission: Submission | null,
): Promise<ShelvedBook> {
  return context.database.write((tx) =>
    once(tx, context, viewer, submission, async () => {
      await reach(tx, viewer, projectId, 'money');
      const book = await renamed(tx, context, viewer, projectId, asked.version);
      const { spec } = await tx.project.findUniqueOrThrow({ where: { id: projectId }, select: { spec: true } });
      const row = {
        id: context.newId(),
        ...asked,
        currency: projectSchema.parse(spec).currency,
        document: book as never,
        madeBy: viewer.userId,
        madeAt: context.clock(),
      };
      await create(tx, row);
      await audit(tx, context, viewer, {
        chain: projectId,
        action: 'labour book kept on the shelf',
        subject: 'labour-book',
        subjectId: row.id,
        after: { name: row.name, version: row.version, note: row.note },
      });
      return viewOf(row, new Map([[viewer.userId, viewer.name]]), book);
    }),
  );
}

/** Takes a book of the shelf into the job: one change of its design, which can be undone. */
export async function takeFromShelf(
  context: Context,
  viewer: Viewer,
  projectId: string,
  version: number,
  id: string,
): Promise<void> {
  const row = await shelved(context.database.db, id);
  await setBook(context, viewer, projectId, {
    version,
    book: bookOf(row),
    action: `labour book ${row.name} ${row.version} taken${id === SHIPPED ? '' : ' from the shelf'}`,
    allowed: (currency) => assertCurrency(row, currency),
  });
}

/** Rates of another currency are other money. */
function assertCurrency(row: { readonly currency: string; readonly document: unknown }, currency: string): void {
  if (row.currency === currency || row.currency === NO_CURRENCY || (bookOf(row).crew ?? []).length === 0) return;
  refuse({
    code: 'work-refused',
    what: `The rates of this book are in ${row.currency}, and the job’s money is ${currency}`,
    remedy: `Keep a version with the crew’s rates in ${currency} on the shelf, and take that.`,
  });
}

/** The job's book under the version it is kept as. */
async function renamed(
  tx: Tx,
  context: Context,
  viewer: Viewer,
  projectId: string,
  version: string,
): Promise<LabourBookDocument> {
  const { document } = await readBook(tx, projectId);
  if (document === null)
    return refuse({
      code: 'work-refused',
      what: 'The job has no labour book to keep',
      remedy: 'Enter one for this job first.',
    });
  if (document.version === version) return document;
  const book = { ...document, version };
  await changeDesign(tx, context, projectId, { scope: [], change: (before) => ({ ...before, labourBook: book }) });
  await audit(tx, context, viewer, {
    chain: projectId,
    action: 'labour book given another version',
    subject: 'labour-book',
    subjectId: projectId,
    before: { version: document.version },
    after: { version },
  });
  return book;
}

async function create(tx: Tx, data: Parameters<Tx['shelvedLabourBook']['create']>[0]['data']): Promise<void> {
  try {
    await tx.shelvedLabourBook.create({ data });
  } catch (error) {
    if (!isUniqueViolation(error)) throw error;
    refuse({ code: 'duplicate', what: `version of ${data.name}`, field: 'version', value: String(data.version) });
  }
}
