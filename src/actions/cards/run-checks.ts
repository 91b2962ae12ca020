import type { InsulationRule } from '../../domain/quality/insulation/criterion.ts';
import { type InsulationResult, judgeInsulation } from '../../domain/quality/insulation-test.ts';
import type { InsulationTestBody, RecordKind, SiteRecord } from '../../domain/quality/record.ts';
import { staleBecause, VOIDS_TESTS, type Work } from '../../domain/quality/stale.ts';
import type { Reader } from '../../store/database.ts';
import { marksOf } from '../../store/records.ts';
import { isTest } from '../closeout/site-records.ts';
import type { RunAt } from '../records/run-at.ts';
import { boundariesIn, readBoundaries } from '../run-states.ts';

/** One insulation test of a run with its working. */
export interface TestStanding {
  readonly record: SiteRecord<InsulationTestBody>;
  /** False once another test replaced it: it stays in the book and counts no more. */
  readonly stands: boolean;
  /** The newest of those that stand: the one that counts. */
  readonly counts: boolean;
  readonly judged: InsulationResult;
  /** Work done since in everything connected, oldest first: with any, the test is stale. Told for the one that counts. */
  readonly staleBecause: readonly Work[];
}

export interface RuleStanding {
  readonly rule: InsulationRule | null;
  /** By the job's first test: it is not changed any more. */
  readonly locked: boolean;
}

/** Every insulation test of the run, newest first. */
export async function testsOf(reader: Reader, { floor, records, insulation }: RunAt): Promise<TestStanding[]> {
  const replaced = new Set(records.flatMap(({ supersedes }) => (supersedes === null ? [] : [supersedes.id])));
  const tests = records.filter(isTest).sort((a, b) => Date.parse(a.at) - Date.parse(b.at));
  const newest = tests.filter((test) => !replaced.has(test.id)).at(-1);
  const since = newest === undefined ? [] : await workSince(reader, floor, newest.at);
  return tests.reverse().map((record) => ({
    record,
    stands: !replaced.has(record.id),
    counts: record === newest,
    judged: judgeInsulation({ ...insulation, test: record.body, at: record.at }),
    staleBecause: record === newest ? since : [],
  }));
}

async function workSince(reader: Reader, floor: RunAt['floor'], testAt: string): Promise<readonly Work[]> {
  const connected = await readBoundaries(reader, floor.projectId, [floor.id]);
  const where = {
    runId: { in: connected.map((run) => run.id) },
    kind: { in: [...VOIDS_TESTS] },
    at: { gte: new Date(testAt) },
  };
  const [rows, corrections] = await Promise.all([
    reader.inspection.findMany({
      where,
      select: { id: true, runId: true, subject: true, subjectId: true, kind: true, at: true },
    }),
    reader.inspection.findMany({
      where: { runId: where.runId, supersedesId: { not: null } },
      select: { supersedesId: true },
    }),
  ]);
  const gone = new Set(corrections.map((row) => row.supersedesId));
  const standing = rows.filter((row) => !gone.has(row.id));
  const marks = await marksOf(reader, standing);
  const work = standing.map((row): Work => {
    const { run = '', mark = '' } = marks.get(row.subjectId) ?? {};
    return { run, mark, kind: row.kind as RecordKind, at: row.at.toISOString() };
  });
  return staleBecause({ run: floor.key, at: testAt }, work, boundariesIn(connected));
}

/** The rule that all tests of the job are judged by. */
export async function ruleStanding(
  reader: Reader,
  projectId: string,
): Promise<RuleStanding & { readonly version: number }> {
  const project = await reader.project.findUniqueOrThrow({
    where: { id: projectId },
    select: { insulationRule: true, version: true },
  });
  const test = await reader.inspection.findFirst({
    where: { projectId, kind: 'insulation-test' },
    select: { id: true },
  });
  return { rule: project.insulationRule as InsulationRule | null, locked: test !== null, version: project.version };
}
