import { z } from 'zod';
import { type BuswayTypeDocument, buswayTypeSchema, type ProjectDocument } from '../document/job-document.ts';
import { canonicalJson } from '../domain/canonical-json.ts';
import type { Reader, Tx } from '../store/database.ts';
import { audit } from './audit.ts';
import type { Context, Viewer } from './context.ts';
import { changeDesign } from './designs.ts';
import { once, type Submission } from './once.ts';
import { cut, type Listed, type PageQuery } from './paging.ts';
import { type Reach, reach } from './reach.ts';
import { refuse } from './refused.ts';
import { assertVersion } from './version.ts';

export const buswayTypeViewSchema = z.object({ id: z.string(), version: z.number().int(), document: buswayTypeSchema });
export type BuswayTypeView = z.infer<typeof buswayTypeViewSchema>;

export async function listBuswayTypes(
  context: Context,
  viewer: Viewer,
  projectId: string,
  page: PageQuery,
): Promise<Listed<BuswayTypeView>> {
  const { db } = context.database;
  const reached = await reach(db, viewer, projectId);
  const [rows, total] = await Promise.all([
    db.buswayType.findMany({ where: { projectId }, orderBy: [{ ordinal: 'asc' }, { key: 'asc' }], ...cut(page) }),
    db.buswayType.count({ where: { projectId } }),
  ]);
  return { items: rows.map((row) => fenced(viewOf(row), reached)), total, page: page.page, limit: page.limit };
}

export async function getBuswayType(
  context: Context,
  viewer: Viewer,
  projectId: string,
  id: string,
): Promise<BuswayTypeView> {
  const reached = await reach(context.database.db, viewer, projectId);
  return fenced(await readType(context.database.db, projectId, id), reached);
}

export async function createBuswayType(
  context: Context,
  viewer: Viewer,
  projectId: string,
  type: BuswayTypeDocument,
  submission: Submission | null,
): Promise<BuswayTypeView> {
  return context.database.write((tx) =>
    once(tx, context, viewer, submission, async () => {
      await reach(tx, viewer, projectId, 'design');
      await changeDesign(tx, context, projectId, {
        scope: [],
        change: (before) => ({ ...before, buswayTypes: [...before.buswayTypes, type] }),
        faultPath: shortPath,
      });
      const made = await tx.buswayType.findUniqueOrThrow({ where: { projectId_key: { projectId, key: type.id } } });
      await audit(tx, context, viewer, {
        chain: projectId,
        action: 'busway type made',
        subject: 'busway-type',
        subjectId: made.id,
        after: type,
        money: true,
      });
      return viewOf(made);
    }),
  );
}

/** Changes the sheet: every run of this type is laid out anew. */
export async function changeBuswayType(
  context: Context,
  viewer: Viewer,
  projectId: string,
  id: string,
  version: number,
  type: BuswayTypeDocument,
): Promise<BuswayTypeView> {
  return context.database.write(async (tx) => {
    await reach(tx, viewer, projectId, 'design');
    const current = await readType(tx, projectId, id);
    assertVersion(current, version, current);
    const { id: key } = current.document;
    if (!sameMakeUp(current.document, type)) await assertNoJointBegun(tx, id);
    await changeDesign(tx, context, projectId, {
      scope: 'all',
      change: (before) => ({
        ...before,
        project: typeRenamed(before.project, key, type.id),
        buswayTypes: before.buswayTypes.map((old) => (old.id === key ? type : old)),
        runs: before.runs.map((run) => (run.type === key ? { ...run, type: type.id } : run)),
      }),
      rename: { noun: 'type', from: key, to: type.id },
      faultPath: shortPath,
    });
    await audit(tx, context, viewer, {
      chain: projectId,
      action: 'busway type changed',
      subject: 'busway-type',
      subjectId: id,
      before: current.document,
      after: type,
      money: true,
    });
    return readType(tx, projectId, id);
  });
}

/** Rules for spares name their type. */
function typeRenamed(project: ProjectDocument, from: string, to: string): ProjectDocument {
  const spares = project.ordering?.spares;
  if (from === to || spares === undefined) return project;
  const renamed = spares.map((rule) => (rule.type === from ? { ...rule, type: to } : rule));
  return { ...project, ordering: { ...project.ordering, spares: renamed } };
}

/** What a joint card is made of: its steps, its torque, and the poles that are seen seated. */
function sameMakeUp(a: BuswayTypeDocument, b: BuswayTypeDocument): boolean {
  const makeUp = ({ joint, poles, neutral }: BuswayTypeDocument) =>
    canonicalJson({ steps: joint?.steps ?? null, torqueNm: joint?.torqueNm ?? null, poles, neutral });
  return makeUp(a) === makeUp(b);
}

/** Joints that were begun are judged by the sheet they were begun on; another sheet is another type. */
async function assertNoJointBegun(tx: Tx, typeId: string): Promise<void> {
  const begun = await tx.joint.findFirst({
    where: { run: { typeId }, OR: [{ stepsDone: { gt: 0 } }, { state: { not: 'open' } }] },
    select: { mark: true },
  });
  if (begun !== null) {
    refuse({
      code: 'in-use',
      what: 'make-up of joints',
      by: `joint ${begun.mark}, which was begun on it: make another busway type for what comes after`,
    });
  }
}

export async function removeBuswayType(
  context: Context,
  viewer: Viewer,
  projectId: string,
  id: string,
  version: number,
): Promise<void> {
  await context.database.write(async (tx) => {
    await reach(tx, viewer, projectId, 'design');
    const current = await readType(tx, projectId, id);
    assertVersion(current, version, current);
    const user = await tx.run.findFirst({ where: { typeId: id }, select: { key: true } });
    if (user !== null) refuse({ code: 'in-use', what: 'busway type', by: `run ${user.key}` });
    await changeDesign(tx, context, projectId, {
      scope: [],
      change: (before) => ({
        ...before,
        buswayTypes: before.buswayTypes.filter((type) => type.id !== current.document.id),
      }),
    });
    await audit(tx, context, viewer, {
      chain: projectId,
      action: 'busway type removed',
      subject: 'busway-type',
      subjectId: id,
      before: current.document,
      money: true,
    });
  });
}

async function readType(reader: Reader, projectId: string, id: string): Promise<BuswayTypeView> {
  const row = await reader.buswayType.findFirst({ where: { projectId, id } });
  return row === null ? refuse({ code: 'not-found', what: 'busway type' }) : viewOf(row);
}

/** Prices stay in the office. */
function fenced(view: BuswayTypeView, reached: Reach): BuswayTypeView {
  if (reached.may('money')) return view;
  const { prices: _kept, ...document } = view.document;
  return { ...view, document };
}

function viewOf(row: { id: string; version: number; spec: unknown }): BuswayTypeView {
  return buswayTypeViewSchema.parse({ id: row.id, version: row.version, document: row.spec });
}

function shortPath(path: string): string {
  return path.replace(/^buswayTypes\[\d+\]\.?/, '');
}
