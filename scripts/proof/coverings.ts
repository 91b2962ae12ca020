import type { JobDocument, RunDocument } from '../../src/document/job-document.ts';
import { parseJobDocument } from '../../src/document/parse-job-document.ts';
import { toModel } from '../../src/document/to-model.ts';
import { contextFor } from '../../src/domain/layout/context-for.ts';
import { coverings as rank } from '../../src/domain/layout/coverings.ts';
import { type RankedReference, referenceRanking } from '../../tests/proof/reference/sections.ts';
import { dice } from './dice.ts';
import type { Outcome, Proof } from './proof.ts';
import { sectionInstance } from './section-instance.ts';

export const coverings: Proof = {
  name: 'coverings',
  says: 'the best covering of a run and the next two distinct ones, against every combination of every covering',
  fullCount: 5_000,
  shortCount: 150,
  run: ({ count, seed }) => proveCoverings(count, seed),
};

const SHOWN = 3;
/** Combinations that are written out for one run at most; a run with more is left to the other proofs. */
const MOST_WRITTEN = 20_000;

export function proveCoverings(count: number, seed: number, ranking: typeof rank = rank): Outcome {
  const failures: string[] = [];
  const seen = { compared: 0, three: 0, fittings: 0, free: 0 };
  for (let i = 0; seen.compared < count; i += 1) {
    if (i > 20 * count + 100) throw new Error('Hardly an instance can be covered: the proof proves nothing.');
    const document = sectionInstance(dice(seed, i));
    if (!parseJobDocument(document).ok) continue;
    const job = toModel(document);
    for (const [k, run] of document.runs.entries()) {
      const expected = referenceRanking(document, run, SHOWN, MOST_WRITTEN);
      if (expected === null || expected.length === 0) continue;
      const model = job.runs[k]!;
      seen.compared += 1;
      seen.three += expected.length === SHOWN ? 1 : 0;
      seen.fittings += expected[0]!.sections.some(({ kind }) => kind === 'elbow' || kind === 'tee') ? 1 : 0;
      seen.free += run.end === undefined ? 0 : 1;
      const fault = differenceOf(document, run, expected, ranking(model, contextFor(job, model)));
      if (fault !== null) failures.push(`instance ${i}: ${fault}`);
    }
  }
  const { compared, three, fittings, free } = seen;
  return { compared, failures, note: `${three} have three, ${fittings} with fittings, ${free} with a free end` };
}

function differenceOf(
  job: JobDocument,
  run: RunDocument,
  expected: readonly RankedReference[],
  found: ReturnType<typeof rank>,
): string | null {
  const plain = (sections: RankedReference['sections']) => sections.map(({ from, to, kind }) => [from, to, kind]);
  const wanted = expected.map(({ sections, cost }) => ({ sections: plain(sections), more: cost - expected[0]!.cost }));
  const told = found.coverings.map(({ pieces, cost }) => ({
    sections: plain(pieces),
    more: cost.total - found.coverings[0]!.cost.total,
  }));
  if (found.compared && JSON.stringify(told) === JSON.stringify(wanted)) return null;
  return `run ${run.id}: expected ${JSON.stringify(wanted)}, ranked ${JSON.stringify(told)}, of ${JSON.stringify(job)}`;
}
