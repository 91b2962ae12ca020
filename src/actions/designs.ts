import type { Fault } from '../document/fault.ts';
import type { JobDocument } from '../document/job-document.ts';
import { parseJobDocument } from '../document/parse-job-document.ts';
import { toModel } from '../document/to-model.ts';
import { layoutJob } from '../domain/layout/layout-job.ts';
import type { RunLayout } from '../domain/layout/result.ts';
import type { Tx } from '../store/database.ts';
import { keepStep, type NewStep } from '../store/design-steps.ts';
import { type Rename, readDesign, type Scope, saveDesign } from '../store/designs.ts';
import type { Context } from './context.ts';
import { refuse } from './refused.ts';

export interface DesignEdit {
  readonly scope: Scope;
  readonly change: (before: JobDocument) => JobDocument;
  readonly rename?: Rename;
  /** The step that this change takes back. */
  readonly undoes?: NewStep['undoes'];
  /** Turns a fault's path in the whole document into the path in what the person sent. */
  readonly faultPath?: (path: string, after: JobDocument) => string;
}

/**
 * The one way a design changes: read it, change it as a document, check the whole, lay it out, write what differs.
 * It is kept as a step that can be undone; the caller's audit entry comes next and names it.
 * Runs that were released cannot be taken out; they keep their released pieces until they are released again.
 */
export async function changeDesign(
  tx: Tx,
  context: Context,
  projectId: string,
  edit: DesignEdit,
): Promise<{ before: JobDocument; after: JobDocument; layouts: ReadonlyMap<string, RunLayout> }> {
  const before = await readDesign(tx, projectId, edit.scope);
  const after = checked(edit.change(before), edit);
  await assertStaying(tx, projectId, before, after, edit.rename ?? null);
  const layouts = layOut(after);
  await saveDesign(tx, { projectId, before, after, layouts, rename: edit.rename ?? null, newId: context.newId });
  await keepStep(tx, {
    projectId,
    before,
    after,
    rename: edit.rename ?? null,
    undoes: edit.undoes ?? null,
    newId: context.newId,
  });
  return { before, after, layouts };
}

/** The document with every fault refused at once. */
export function checked(document: unknown, edit: Pick<DesignEdit, 'faultPath'> = {}): JobDocument {
  const parsed = parseJobDocument(document);
  if (parsed.ok) return parsed.document;
  const path = edit.faultPath;
  const faults: readonly Fault[] =
    path === undefined
      ? parsed.faults
      : parsed.faults.map((fault) => ({ ...fault, path: path(fault.path, document as JobDocument) }));
  return refuse({ code: 'invalid', faults });
}

/** Layouts by run. */
export function layOut(document: JobDocument): ReadonlyMap<string, RunLayout> {
  return new Map(layoutJob(toModel(document)).map((layout) => [layout.run, layout]));
}

async function assertStaying(
  tx: Tx,
  projectId: string,
  before: JobDocument,
  after: JobDocument,
  rename: Rename | null,
): Promise<void> {
  const stays = new Set(after.runs.map((run) => run.id));
  const gone = before.runs
    .map((run) => run.id)
    .filter((key) => !stays.has(key) && !(rename?.noun === 'run' && rename.from === key));
  if (gone.length === 0) return;
  const released = await tx.run.findFirst({
    where: { projectId, key: { in: gone }, revision: { gt: 0 } },
    select: { key: true },
  });
  if (released !== null)
    refuse({ code: 'in-use', what: 'run', by: `the floor: ${released.key} was released and its records stay` });
}
