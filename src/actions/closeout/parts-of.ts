import { jobDocumentSchema, type ProjectDocument, projectSchema } from '../../document/job-document.ts';
import { readiness } from '../../domain/closeout/readiness.ts';
import type { CloseoutJob } from '../../paper/closeout/job.ts';
import type { CloseoutParts } from '../../paper/closeout-package.ts';
import { type CloseoutDepth, closeoutRuns, runsInOrder } from '../../store/closeout-runs.ts';
import type { Reader } from '../../store/database.ts';
import { readDesign } from '../../store/designs.ts';
import { FIRST_HASH } from '../audit.ts';
import { readAuditLines } from './audit-lines.ts';
import { dossierOf } from './dossier-of.ts';
import { readEvidence } from './read-evidence.ts';

/** What a package is made of, read from one snapshot; runs and audit entries are read as they are asked for. */
export async function partsOf(reader: Reader, projectId: string): Promise<CloseoutParts> {
  const [{ job, project }, evidence, places] = await Promise.all([
    readJob(reader, projectId),
    readEvidence(reader, projectId),
    runsInOrder(reader, projectId),
  ]);
  const insulation = new Map(evidence.runs.map((run) => [run.runId, run.insulation]));
  const read = async function* (depth: CloseoutDepth) {
    for await (const row of closeoutRuns(reader, places, depth)) {
      yield dossierOf(row, project, insulation.get(row.id) ?? { kind: 'missing' });
    }
  };
  return {
    job,
    document: async () => jobDocumentSchema.parse(await readDesign(reader, projectId)),
    readiness: readiness(evidence.runs, evidence.types),
    levels: new Set(places.map((place) => place.levelId)).size,
    runs: places.length,
    dossiers: () => read('records'),
    drawn: () => read('states'),
    audit: () => readAuditLines(reader, projectId),
  };
}

/** The as-of time is that of the newest entry of the job's chain: every change of the record leaves one. */
async function readJob(reader: Reader, projectId: string): Promise<{ job: CloseoutJob; project: ProjectDocument }> {
  const [row, last] = await Promise.all([
    reader.project.findUniqueOrThrow({
      where: { id: projectId },
      select: { spec: true, designVersion: true, createdAt: true },
    }),
    reader.auditEntry.findFirst({
      where: { chain: projectId },
      orderBy: { seq: 'desc' },
      select: { seq: true, at: true, hash: true },
    }),
  ]);
  const project = projectSchema.parse(row.spec);
  const job = {
    ...described(project),
    designVersion: row.designVersion,
    asOf: (last?.at ?? row.createdAt).toISOString(),
    audit: { entries: last?.seq ?? 0, head: last?.hash ?? FIRST_HASH },
  };
  return { job, project };
}

function described(project: ProjectDocument): Omit<CloseoutJob, 'designVersion' | 'asOf' | 'audit'> {
  return {
    number: project.number,
    name: project.name,
    client: project.client ?? null,
    site: project.site ?? null,
    units: project.units,
    timeZone: project.timeZone ?? null,
    codeBasis: project.codeBasis,
    codeEdition: project.codeEdition ?? null,
    voltageLL: project.voltageLL,
    voltageLN: project.voltageLN,
    frequencyHz: project.frequencyHz,
  };
}
