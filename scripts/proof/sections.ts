import type { JobDocument, RunDocument } from '../../src/document/job-document.ts';
import { parseJobDocument } from '../../src/document/parse-job-document.ts';
import { toModel } from '../../src/document/to-model.ts';
import { layoutJob } from '../../src/domain/layout/layout-job.ts';
import type { RunLayout } from '../../src/domain/layout/result.ts';
import { type ReferenceCovering, referenceCovering } from '../../tests/proof/reference/sections.ts';
import { dice } from './dice.ts';
import type { Outcome, Proof } from './proof.ts';
import { sectionInstance } from './section-instance.ts';

export const sections: Proof = {
  name: 'sections',
  says: 'the covering that wins, against every covering written out: cost, nearness at a free end, joints, cut, order',
  fullCount: 20_000,
  shortCount: 400,
  run: ({ count, seed }) => proveSections(count, seed),
};

type LayOut = (job: ReturnType<typeof toModel>) => readonly RunLayout[];

export function proveSections(count: number, seed: number, layOut: LayOut = layoutJob): Outcome {
  const failures: string[] = [];
  const seen = { compared: 0, covered: 0, cut: 0, free: 0, fittings: 0, taken: 0 };
  for (let i = 0; seen.compared < count; i += 1) {
    const job = sectionInstance(dice(seed, i));
    const parsed = parseJobDocument(job);
    if (!parsed.ok) continue;
    seen.taken += 1;
    const layouts = layOut(toModel(parsed.document));
    for (const [k, run] of job.runs.entries()) {
      const expected = referenceCovering(job, run);
      seen.compared += 1;
      seen.covered += expected === null ? 0 : 1;
      seen.cut += expected?.sections.some(({ kind }) => kind === 'cut') ? 1 : 0;
      seen.fittings += expected?.sections.some(({ kind }) => kind === 'elbow' || kind === 'tee') ? 1 : 0;
      seen.free += expected !== null && run.end !== undefined ? 1 : 0;
      const fault = differenceOf(job, run, expected, layouts[k]!);
      if (fault !== null) failures.push(`instance ${i}: ${fault}`);
    }
    if (i > 20 * count + 100) throw new Error('Hardly an instance is a job document: the proof proves nothing.');
  }
  const { covered, cut, fittings, free, compared } = seen;
  const note = `${covered} can be covered (${cut} with a cut, ${fittings} with fittings, ${free} with a free end), ${compared - covered} cannot`;
  return { compared, failures, note };
}

function differenceOf(
  job: JobDocument,
  run: RunDocument,
  expected: ReferenceCovering | null,
  layout: RunLayout,
): string | null {
  const found = layout.ok
    ? { sections: layout.pieces, joints: layout.joints.map(({ at }) => at) }
    : { sections: [], joints: [] };
  const wanted = expected ?? { sections: [], joints: [] };
  if ((expected !== null) === layout.ok && JSON.stringify(plain(found)) === JSON.stringify(plain(wanted))) return null;
  return `run ${run.id}: expected ${JSON.stringify(plain(wanted))}, laid out ${JSON.stringify(plain(found))}, ok ${layout.ok}, of ${JSON.stringify(job)}`;
}

function plain({ sections, joints }: ReferenceCovering | Pick<ReferenceCovering, 'sections' | 'joints'>) {
  return { sections: sections.map(({ from, to, kind, hand }) => [from, to, kind, hand]), joints };
}
