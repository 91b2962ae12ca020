import { parseJobDocument } from '../../src/document/parse-job-document.ts';
import { toModel } from '../../src/document/to-model.ts';
import { layoutJob } from '../../src/domain/layout/layout-job.ts';
import type { RunLayout } from '../../src/domain/layout/result.ts';
import { beamReactions } from '../../tests/proof/reference/beam.ts';
import { weightLine } from '../../tests/proof/reference/loads.ts';
import { dice } from './dice.ts';
import type { Outcome, Proof } from './proof.ts';
import { supportInstance } from './support-instance.ts';

export const beam: Proof = {
  name: 'beam',
  says: 'continuous loads on supports, against a stiffness-matrix solution of the same beam; and their sum is the weight',
  fullCount: 20_000,
  shortCount: 200,
  run: ({ count, seed }) => proveBeams(count, seed),
};

/** Both ways solve the same equations in another order: what they may differ by is rounding alone. */
const CLOSE = 1e-6;

type LayOut = (job: ReturnType<typeof toModel>) => readonly RunLayout[];

export function proveBeams(count: number, seed: number, layOut: LayOut = layoutJob): Outcome {
  const failures: string[] = [];
  let [compared, reactions, mostSpans, worst] = [0, 0, 0, 0];
  for (let i = 0; compared < count; i += 1) {
    if (i > 20 * count + 100) throw new Error('Hardly an instance can be held: the proof proves nothing.');
    const chance = dice(seed, i);
    const job = supportInstance(chance, { places: chance.int(10, 60) });
    const parsed = parseJobDocument(job);
    if (!parsed.ok) continue;
    const layouts = layOut(toModel(parsed.document));
    for (const [k, run] of job.runs.entries()) {
      const { supports, length } = layouts[k]!;
      if (supports.length === 0) continue;
      const line = weightLine(job, run, length);
      const total = [...line.spread, ...line.points].reduce((sum, { kg }) => sum + kg, 0);
      const expected = beamReactions(
        line,
        supports.map(({ at }) => at),
      );
      const off = supports.map(({ continuousLoadKg }, s) => Math.abs(continuousLoadKg - expected[s]!) / total);
      const sum = supports.reduce((all, { continuousLoadKg }) => all + continuousLoadKg, 0);
      compared += 1;
      reactions += supports.length;
      mostSpans = Math.max(mostSpans, supports.length - 1);
      worst = Math.max(worst, ...off);
      if (Math.max(...off) > CLOSE || Math.abs(sum - total) > CLOSE * total) {
        const found = supports.map(({ at, continuousLoadKg }) => [at, continuousLoadKg]);
        failures.push(
          `instance ${i}, run ${run.id}: expected ${expected} kg, computed ${found}, of ${JSON.stringify(job)}`,
        );
      }
    }
  }
  const note = `${reactions} reactions, up to ${mostSpans} spans; greatest difference ${worst.toExponential(1)} of the beam's weight`;
  return { compared, failures, note };
}
