import { z } from 'zod';
import { type LabourBookDocument, labourBookSchema, projectSchema } from '../document/job-document.ts';
import { toLabourBook } from '../document/model/to-labour-book.ts';
import { withoutRates } from '../document/money-fence.ts';
import { isJointLabourAlike } from '../domain/layout/joint-labour-cost.ts';
import type { Reader, Tx } from '../store/database.ts';
import { audit } from './audit.ts';
import type { Context, Viewer } from './context.ts';
import { changeDesign } from './designs.ts';
import { reach } from './reach.ts';
import { assertVersion } from './version.ts';

export const labourBookViewSchema = z.object({
  version: z.number().int().describe('0 while the job has no labour book.'),
  document: labourBookSchema.nullable(),
});
export type LabourBookView = z.infer<typeof labourBookViewSchema>;

/** The job's labour book; crew rates are left out for anybody but the office. */
export async function getLabourBook(context: Context, viewer: Viewer, projectId: string): Promise<LabourBookView> {
  const reached = await reach(context.database.db, viewer, projectId);
  const view = await readBook(context.database.db, projectId);
  if (view.document === null || reached.may('money')) return view;
  return { ...view, document: withoutRates(view.document) };
}

/** Sets the labour book. */
export async function setLabourBook(
  context: Context,
  viewer: Viewer,
  projectId: string,
  version: number,
  book: LabourBookDocument,
): Promise<LabourBookView> {
  return setBook(context, viewer, projectId, { version, book, action: 'labour book set' });
}

export interface BookEdit {
  readonly version: number;
  readonly book: LabourBookDocument;
  /** In the words of the audit trail. */
  readonly action: string;
  /** Refuses what does not suit the job's currency. */
  readonly allowed?: (currency: string) => void;
}

/**
 * Puts a labour book in the place of the job's, wherever it comes from. Joint labour is part of a covering's cost: only when
 * that changes are the runs laid out anew.
 */
export async function setBook(
  context: Context,
  viewer: Viewer,
  projectId: string,
  { version, book, action, allowed }: BookEdit,
): Promise<LabourBookView> {
  return context.database.write(async (tx) => {
    await reach(tx, viewer, projectId, 'money');
    const current = await readBook(tx, projectId);
    assertVersion(current, version, current);
    allowed?.(await currencyOf(tx, projectId));
    await changeDesign(tx, context, projectId, {
      scope: sameJointLabour(current.document, book) ? [] : 'all',
      change: (before) => ({ ...before, labourBook: book }),
      faultPath: (path) => path.replace(/^labourBook\.?/, ''),
    });
    await audit(tx, context, viewer, {
      chain: projectId,
      action,
      subject: 'labour-book',
      subjectId: projectId,
      before: current.document,
      after: book,
      money: true,
    });
    return readBook(tx, projectId);
  });
}

function sameJointLabour(before: LabourBookDocument | null, after: LabourBookDocument): boolean {
  return isJointLabourAlike(before && toLabourBook(before), toLabourBook(after));
}

async function currencyOf(tx: Tx, projectId: string): Promise<string> {
  const { spec } = await tx.project.findUniqueOrThrow({ where: { id: projectId }, select: { spec: true } });
  return projectSchema.parse(spec).currency;
}

/** The book as it is written, rates and all; the caller has asked who is reading. */
export async function readBook(reader: Reader | Tx, projectId: string): Promise<LabourBookView> {
  const row = await reader.labourBook.findUnique({ where: { projectId } });
  return row === null
    ? { version: 0, document: null }
    : labourBookViewSchema.parse({ version: row.version, document: row.spec });
}
