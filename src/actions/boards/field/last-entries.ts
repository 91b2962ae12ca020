import { recordBodySchema } from '../../../document/record-schema.ts';
import type { TorqueUnit } from '../../../domain/quality/record.ts';
import type { Reader } from '../../../store/database.ts';

export interface LastTool {
  readonly toolId: string;
  readonly calibrationDue: string;
  readonly unit: TorqueUnit;
}

/** Torque steps are at most a few in a dozen, so the last one is among these. */
const LOOKED_THROUGH = 60;

/** The torque tool that this person wrote down last in the job, to be offered again. */
export async function lastTool(reader: Reader, projectId: string, userId: string): Promise<LastTool | null> {
  const rows = await reader.inspection.findMany({
    where: { projectId, byUserId: userId, kind: 'joint-step' },
    orderBy: { recordedAt: 'desc' },
    take: LOOKED_THROUGH,
    select: { body: true },
  });
  for (const row of rows) {
    const body = recordBodySchema.parse(row.body);
    if (body.kind === 'joint-step' && body.torque !== null) {
      const { toolId, calibrationDue, unit } = body.torque;
      return { toolId, calibrationDue, unit };
    }
  }
  return null;
}

/** The steps of the tap-off's own sheet as somebody wrote them down last in the job; empty before the first. */
export async function lastTapSteps(reader: Reader, projectId: string): Promise<readonly string[]> {
  const row = await reader.inspection.findFirst({
    where: { projectId, kind: 'tap-set' },
    orderBy: { recordedAt: 'desc' },
    select: { body: true },
  });
  const body = row === null ? null : recordBodySchema.parse(row.body);
  return body?.kind === 'tap-set' ? body.steps : [];
}

export interface LastIsolation {
  readonly provedBy: string;
  readonly provedAt: string;
}

const SHIFT_MS = 12 * 3_600_000;

/** Who proved this run without voltage and when, as this person wrote it down in the same shift; to be looked at and confirmed again. */
export async function lastIsolation(
  reader: Reader,
  { runId, userId, now }: { readonly runId: string; readonly userId: string; readonly now: Date },
): Promise<LastIsolation | null> {
  const row = await reader.inspection.findFirst({
    where: { runId, byUserId: userId, kind: 'tap-set', at: { gte: new Date(now.getTime() - SHIFT_MS) } },
    orderBy: { recordedAt: 'desc' },
    select: { body: true },
  });
  const body = row === null ? null : recordBodySchema.parse(row.body);
  return body?.kind === 'tap-set' ? { provedBy: body.isolation.provedBy, provedAt: body.isolation.provedAt } : null;
}

export interface LastTestSet {
  readonly id: string;
  readonly calibrationDue: string | null;
  readonly topRange: { readonly value: number; readonly unit: string } | null;
  readonly isolations: readonly string[];
}

/** The insulation test set that this person wrote down last in the job. */
export async function lastTestSet(reader: Reader, projectId: string, userId: string): Promise<LastTestSet | null> {
  const row = await reader.inspection.findFirst({
    where: { projectId, byUserId: userId, kind: 'insulation-test' },
    orderBy: { recordedAt: 'desc' },
    select: { body: true },
  });
  const body = row === null ? null : recordBodySchema.parse(row.body);
  return body?.kind === 'insulation-test' ? { ...body.instrument, isolations: body.isolations } : null;
}
