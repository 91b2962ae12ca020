import { parseJobDocument } from '../../src/document/parse-job-document.ts';
import { toModel } from '../../src/document/to-model.ts';
import { layoutJob } from '../../src/domain/layout/layout-job.ts';
import type { RunLayout } from '../../src/domain/layout/result.ts';
import { programText, solver } from '../../tests/proof/reference/solver.ts';
import { supportProgram, supportValue } from '../../tests/proof/reference/support-program.ts';
import { supportProblem } from '../../tests/proof/reference/supports.ts';
import { dice } from './dice.ts';
import type { Outcome, Proof } from './proof.ts';
import { supportInstance } from './support-instance.ts';

export const solverSupports: Proof = {
  name: 'solver-supports',
  says: 'count and squared gaps of the supports within capacity, against an integer program given to a solver',
  fullCount: 500,
  shortCount: 20,
  run: ({ count, seed }) => proveSupportsBySolver(count, seed),
};

type LayOut = (job: ReturnType<typeof toModel>) => readonly RunLayout[];

/** So many runs that the solver can hang; those that it finds impossible come on top and are compared as well. */
export async function proveSupportsBySolver(count: number, seed: number, layOut: LayOut = layoutJob): Promise<Outcome> {
  const solve = await solver();
  const failures: string[] = [];
  const seen = { held: 0, withCapacity: 0, impossible: 0, choices: 0 };
  for (let i = 0; seen.held < count; i += 1) {
    if (i > 20 * count + 100) throw new Error('Hardly an instance can be held: the proof proves nothing.');
    const chance = dice(seed, i);
    const job = supportInstance(chance, { places: chance.int(8, 60) });
    if (!parseJobDocument(job).ok) continue;
    const layouts = layOut(toModel(job));
    for (const [k, run] of job.runs.entries()) {
      const layout = layouts[k]!;
      if (!layout.ok) continue;
      const joints = layout.joints.map(({ at }) => at);
      const problem = supportProblem(job, run, layout.length, joints);
      const posed = supportProgram(problem);
      const chosen = posed && solve(programText(posed.program));
      const expected = posed && chosen && posed.valueOf(chosen);
      if (expected === null) seen.impossible += 1;
      else seen.held += 1;
      seen.withCapacity += expected !== null && problem.capacityKg !== null ? 1 : 0;
      seen.choices = Math.max(seen.choices, posed?.program.least.length ?? 0);
      const places = layout.supports.map(({ at }) => at);
      const found = places.length === 0 ? null : supportValue(problem, places);
      if (JSON.stringify(found) !== JSON.stringify(expected)) {
        const told = `run ${run.id}: the solver has ${JSON.stringify(expected)}, the layout ${JSON.stringify(found)}`;
        failures.push(`instance ${i}: ${told}, joints ${joints}, of ${JSON.stringify(job)}`);
      }
    }
  }
  const { held, withCapacity, impossible, choices } = seen;
  const note = `${held} can be held (${withCapacity} within a capacity), ${impossible} cannot; up to ${choices} choices a run`;
  return { compared: held + impossible, failures, note };
}
