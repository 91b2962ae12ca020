import { type Readiness, readiness } from '../../domain/closeout/readiness.ts';
import type { Reader } from '../../store/database.ts';
import { readEvidence } from './read-evidence.ts';

const KEPT = 2;
/** Whatever changes a job appends to its audit chain, so the readiness of its last readings is kept by each process. */
const kept = new Map<string, Promise<Readiness>>();

/** The readiness of a job as it stands. The caller has asked who is reading. */
export async function readinessOf(reader: Reader, projectId: string): Promise<Readiness> {
  const last = await reader.auditEntry.findFirst({
    where: { chain: projectId },
    orderBy: { seq: 'desc' },
    select: { hash: true },
  });
  const key = `${projectId} ${last?.hash ?? ''}`;
  const known = kept.get(key);
  if (known !== undefined) return known;
  const reading = readEvidence(reader, projectId).then(({ runs, types }) => readiness(runs, types));
  kept.set(key, reading);
  for (const old of [...kept.keys()].slice(0, Math.max(0, kept.size - KEPT))) kept.delete(old);
  reading.catch(() => kept.delete(key));
  return reading;
}
