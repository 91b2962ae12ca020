import { z } from 'zod';
import { INSULATION_RULES } from '../domain/quality/insulation/criterion.ts';
import type { RecordKind, Subject } from '../domain/quality/record.ts';
import type { Reader } from '../store/database.ts';
import { marksOf, type RecordRow } from '../store/records.ts';
import { audit } from './audit.ts';
import { ruleStanding } from './cards/run-checks.ts';
import type { Context, Viewer } from './context.ts';
import { cut, type Listed, type PageQuery } from './paging.ts';
import { reach } from './reach.ts';
import { type RecordView, viewOfRow } from './records/record-view.ts';
import { refuse } from './refused.ts';
import { assertVersion } from './version.ts';

export interface InspectionFilter extends PageQuery {
  /** The run's label. */
  readonly run?: string | undefined;
  readonly subject?: Subject | undefined;
  readonly subjectId?: string | undefined;
  readonly kind?: RecordKind | undefined;
  readonly outcome?: string | undefined;
  /** Id of the person who made it. */
  readonly by?: string | undefined;
  /** That reached the book at this moment or later. */
  readonly since?: string | undefined;
}

/** The book of records, newest first. */
export async function listInspections(
  context: Context,
  viewer: Viewer,
  projectId: string,
  filter: InspectionFilter,
): Promise<Listed<RecordView>> {
  const { db } = context.database;
  await reach(db, viewer, projectId);
  const { run, subject, subjectId, kind, outcome, by, since } = filter;
  const where = {
    projectId,
    ...(run === undefined ? {} : { run: { key: run } }),
    ...(subject === undefined ? {} : { subject }),
    ...(subjectId === undefined ? {} : { subjectId }),
    ...(kind === undefined ? {} : { kind }),
    ...(outcome === undefined ? {} : { outcome }),
    ...(by === undefined ? {} : { byUserId: by }),
    ...(since === undefined ? {} : { recordedAt: { gte: new Date(since) } }),
  };
  const [rows, total] = await Promise.all([
    db.inspection.findMany({ where, orderBy: { seq: 'desc' }, ...cut(filter) }),
    db.inspection.count({ where }),
  ]);
  return { items: await viewsOf(db, rows), total, page: filter.page, limit: filter.limit };
}

export async function getInspection(
  context: Context,
  viewer: Viewer,
  projectId: string,
  id: string,
): Promise<RecordView> {
  const { db } = context.database;
  await reach(db, viewer, projectId);
  const row = await db.inspection.findFirst({ where: { projectId, id } });
  const [view] = row === null ? [] : await viewsOf(db, [row]);
  return view ?? refuse({ code: 'not-found', what: 'record' });
}

async function viewsOf(reader: Reader, rows: readonly (RecordRow & { readonly runId: string })[]) {
  const [marks, replacing] = await Promise.all([
    marksOf(reader, rows),
    reader.inspection.findMany({
      where: { supersedesId: { in: rows.map((row) => row.id) } },
      select: { id: true, supersedesId: true },
    }),
  ]);
  const replacedBy = new Map(replacing.map((row) => [row.supersedesId, row.id]));
  return rows.map((row) => {
    const placed = marks.get(row.subjectId) ?? { run: '', mark: '' };
    return viewOfRow(row, { ...placed, supersededBy: replacedBy.get(row.id) ?? null });
  });
}

export const insulationRuleSchema = z.strictObject({
  rule: z.enum(INSULATION_RULES).describe('Judges every insulation test of the job, and stands on every report.'),
});

export const insulationRuleViewSchema = z.object({
  version: z.number().int(),
  rule: z.enum(INSULATION_RULES).nullable().describe('null until it is chosen, or the first test names it.'),
  locked: z.boolean().describe("By the job's first test: it is not changed any more."),
});
export type InsulationRuleView = z.infer<typeof insulationRuleViewSchema>;

export async function getInsulationRule(
  context: Context,
  viewer: Viewer,
  projectId: string,
): Promise<InsulationRuleView> {
  await reach(context.database.db, viewer, projectId);
  return ruleStanding(context.database.db, projectId);
}

/** Chooses the rule while there is no test yet. After the first reading limits are not moved. */
export async function setInsulationRule(
  context: Context,
  viewer: Viewer,
  projectId: string,
  version: number,
  { rule }: z.infer<typeof insulationRuleSchema>,
): Promise<InsulationRuleView> {
  return context.database.write(async (tx) => {
    await reach(tx, viewer, projectId, 'design');
    const current = await ruleStanding(tx, projectId);
    assertVersion(current, version, current);
    if (current.locked && current.rule !== null && current.rule !== rule) {
      return refuse({
        code: 'record-refused',
        refusal: { code: 'insulation.rule-locked', args: { locked: current.rule, asked: rule } },
        say: { units: 'metric', zone: null },
        current,
        version: current.version,
      });
    }
    if (current.rule === rule) return current;
    await tx.project.update({ where: { id: projectId }, data: { insulationRule: rule, version: { increment: 1 } } });
    await audit(tx, context, viewer, {
      chain: projectId,
      action: 'insulation rule chosen',
      subject: 'project',
      subjectId: projectId,
      before: { rule: current.rule },
      after: { rule },
    });
    return ruleStanding(tx, projectId);
  });
}
