import { z } from 'zod';
import { type CrewPlanDocument, crewPlanSchema } from '../document/crew-plan/schema.ts';
import type { Reader } from '../store/database.ts';
import { audit } from './audit.ts';
import { contentVersion } from './content-version.ts';
import type { Context, Viewer } from './context.ts';
import { reach } from './reach.ts';
import { refuse } from './refused.ts';
import { assertVersion } from './version.ts';

export const crewPlanViewSchema = z.object({
  version: z.number().int().describe('Made from what the plan says: equal plans have equal versions.'),
  document: crewPlanSchema.nullable(),
});
export type CrewPlanView = z.infer<typeof crewPlanViewSchema>;

/** How the job is manned, for everybody who reads the job. */
export async function getCrewPlan(context: Context, viewer: Viewer, projectId: string): Promise<CrewPlanView> {
  await reach(context.database.db, viewer, projectId);
  return read(context.database.db, projectId);
}

/** Sets how the job is manned. */
export async function setCrewPlan(
  context: Context,
  viewer: Viewer,
  projectId: string,
  version: number,
  plan: CrewPlanDocument,
): Promise<CrewPlanView> {
  return context.database.write(async (tx) => {
    await reach(tx, viewer, projectId, 'design');
    const current = await read(tx, projectId);
    assertVersion(current, version, current);
    await assertLevels(tx, projectId, plan);
    await tx.project.update({ where: { id: projectId }, data: { crewPlan: plan } });
    await audit(tx, context, viewer, {
      chain: projectId,
      action: 'crew plan set',
      subject: 'crew-plan',
      subjectId: projectId,
      before: current.document,
      after: plan,
    });
    return read(tx, projectId);
  });
}

async function assertLevels(reader: Reader, projectId: string, { released }: CrewPlanDocument): Promise<void> {
  const rows = await reader.level.findMany({ where: { projectId }, select: { key: true } });
  const known = new Set(rows.map(({ key }) => key));
  const faults = released.flatMap(({ level }, index) =>
    known.has(level)
      ? []
      : [
          {
            path: `released[${index}].level`,
            message: `The job has no level ${level}.`,
            remedy: 'Name one of its levels, or leave the release out.',
          },
        ],
  );
  if (faults.length > 0) refuse({ code: 'invalid', faults });
}

async function read(reader: Reader, projectId: string): Promise<CrewPlanView> {
  const { crewPlan } = await reader.project.findUniqueOrThrow({
    where: { id: projectId },
    select: { crewPlan: true },
  });
  const document = crewPlan === null ? null : crewPlanSchema.parse(crewPlan);
  return { version: contentVersion(document), document };
}
