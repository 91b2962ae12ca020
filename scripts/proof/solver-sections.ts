import type { JobDocument, RunDocument } from '../../src/document/job-document.ts';
import { parseJobDocument } from '../../src/document/parse-job-document.ts';
import { toModel } from '../../src/document/to-model.ts';
import { layoutJob } from '../../src/domain/layout/layout-job.ts';
import type { RunLayout } from '../../src/domain/layout/result.ts';
import { runShape, typeOf } from '../../tests/proof/reference/run-shape.ts';
import { type SectionValue, sectionProgram } from '../../tests/proof/reference/section-program.ts';
import { jointCost, shopOf } from '../../tests/proof/reference/sections.ts';
import { programText, solver } from '../../tests/proof/reference/solver.ts';
import { dice } from './dice.ts';
import type { Outcome, Proof } from './proof.ts';
import { sectionInstance } from './section-instance.ts';

export const solverSections: Proof = {
  name: 'solver-sections',
  says: 'cost, nearness at a free end and joints of the covering, against an integer program given to a solver',
  fullCount: 500,
  shortCount: 30,
  run: ({ count, seed }) => proveSectionsBySolver(count, seed),
};

type LayOut = (job: ReturnType<typeof toModel>) => readonly RunLayout[];

/** So many runs that the solver covers; those that it finds impossible come on top and are compared as well. */
export async function proveSectionsBySolver(count: number, seed: number, layOut: LayOut = layoutJob): Promise<Outcome> {
  const solve = await solver();
  const failures: string[] = [];
  const seen = { covered: 0, impossible: 0, choices: 0 };
  for (let i = 0; seen.covered < count; i += 1) {
    if (i > 20 * count + 100) throw new Error('Hardly an instance can be covered: the proof proves nothing.');
    const job = sectionInstance(dice(seed, i));
    if (!parseJobDocument(job).ok) continue;
    const layouts = layOut(toModel(job));
    for (const [k, run] of job.runs.entries()) {
      const posed = sectionProgram(job, run);
      const chosen = posed && solve(programText(posed.program));
      const expected = posed && chosen && posed.valueOf(chosen);
      if (expected === null) seen.impossible += 1;
      else seen.covered += 1;
      seen.choices = Math.max(seen.choices, posed?.program.least.length ?? 0);
      const found = layouts[k]!.ok ? valueIn(job, run, layouts[k]!) : null;
      if (JSON.stringify(found) !== JSON.stringify(expected)) {
        const told = `run ${run.id}: the solver has ${JSON.stringify(expected)}, the layout ${JSON.stringify(found)}`;
        failures.push(`instance ${i}: ${told}, of ${JSON.stringify(job)}`);
      }
    }
  }
  const note = `${seen.covered} can be covered, ${seen.impossible} cannot; up to ${seen.choices} choices a run`;
  return { compared: seen.covered + seen.impossible, failures, note };
}

/** A layout valued by the document's prices, and not by the program's own reckoning of it. */
function valueIn(job: JobDocument, run: RunDocument, { pieces, joints, length }: RunLayout): SectionValue {
  const type = typeOf(job, run);
  const shop = shopOf(type, jointCost(job, type));
  const straight = pieces.filter(({ kind }) => kind === 'stock' || kind === 'cut');
  const bought = straight.reduce((sum, { from, to }) => sum + shop.priceOf(to - from), 0);
  const cuts = straight.filter(({ kind }) => kind === 'cut').length;
  const joined = straight.filter(({ from }) => from > 0).length;
  return {
    cost: bought + cuts * shop.cutSurcharge + joined * shop.joint,
    offBy: Math.abs(length - runShape(job, run).parts.at(-1)!.to),
    joints: joints.length,
  };
}
