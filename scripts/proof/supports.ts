import type { JobDocument, RunDocument } from '../../src/document/job-document.ts';
import { parseJobDocument } from '../../src/document/parse-job-document.ts';
import { toModel } from '../../src/document/to-model.ts';
import { layoutJob } from '../../src/domain/layout/layout-job.ts';
import type { RunLayout } from '../../src/domain/layout/result.ts';
import { simpleSpanLoad } from '../../tests/proof/reference/loads.ts';
import {
  bestByPairs,
  bestBySubsets,
  type SupportProblem,
  supportProblem,
} from '../../tests/proof/reference/supports.ts';
import { dice } from './dice.ts';
import type { Outcome, Proof } from './proof.ts';
import { supportInstance } from './support-instance.ts';

export const supports: Proof = {
  name: 'supports',
  says: 'fewest, least squared gaps, smallest list, within capacity, against every subset or a table of all pairs',
  fullCount: 30_000,
  shortCount: 300,
  run: ({ count, seed }) => proveSupports(count, seed),
};

/** 2ⁿ subsets are written out up to here; past it the table of pairs is the reference. */
const MOST_SUBSETS_OF = 13;

type LayOut = (job: ReturnType<typeof toModel>) => readonly RunLayout[];

export function proveSupports(count: number, seed: number, layOut: LayOut = layoutJob): Outcome {
  const failures: string[] = [];
  const seen = { compared: 0, bySubsets: 0, held: 0, withCapacity: 0 };
  for (let i = 0; seen.compared < count; i += 1) {
    if (i > 20 * count + 100) throw new Error('Hardly an instance can be covered: the proof proves nothing.');
    const chance = dice(seed, i);
    const job = supportInstance(chance, { places: chance.chance(50) ? chance.int(8, 18) : chance.int(20, 70) });
    const parsed = parseJobDocument(job);
    if (!parsed.ok) continue;
    const layouts = layOut(toModel(parsed.document));
    for (const [k, run] of job.runs.entries()) {
      const layout = layouts[k]!;
      if (!layout.ok) continue;
      const problem = supportProblem(
        job,
        run,
        layout.length,
        layout.joints.map(({ at }) => at),
      );
      const few = problem.places.length <= MOST_SUBSETS_OF;
      const expected = few ? bestBySubsets(problem) : bestByPairs(problem);
      seen.compared += 1;
      seen.bySubsets += few ? 1 : 0;
      seen.held += expected === null ? 0 : 1;
      seen.withCapacity += expected !== null && problem.capacityKg !== null ? 1 : 0;
      const fault = differenceOf(job, run, problem, expected, layout);
      if (fault !== null) failures.push(`instance ${i}: ${fault}`);
    }
  }
  const { compared, bySubsets, held, withCapacity } = seen;
  const note = `${held} can be held (${withCapacity} within a capacity), ${compared - held} cannot; ${bySubsets} by every subset`;
  return { compared, failures, note };
}

function differenceOf(
  job: JobDocument,
  run: RunDocument,
  problem: SupportProblem,
  expected: readonly number[] | null,
  layout: RunLayout,
): string | null {
  const found = layout.supports.map(({ at }) => at);
  const told = () => `joints ${layout.joints.map(({ at }) => at)}, of ${JSON.stringify(job)}`;
  if (JSON.stringify(found) !== JSON.stringify(expected ?? [])) {
    return `run ${run.id}: expected ${JSON.stringify(expected)}, laid out ${JSON.stringify(found)}, ${told()}`;
  }
  const off = layout.supports.find(({ at, loadKg }, i) => {
    const load = simpleSpanLoad(problem.weights, found[i - 1] ?? null, at, found[i + 1] ?? null);
    return Math.abs(load - loadKg) > 1e-6 * (1 + load);
  });
  return off === undefined ? null : `run ${run.id}: the load at ${off.at} is not ${off.loadKg} kg, ${told()}`;
}
