import type { JobDocument, RunDocument } from '../../document/job-document.ts';
import { toModel } from '../../document/to-model.ts';
import { contextFor } from '../../domain/layout/context-for.ts';
import type { PlacedPiece, RunLayout } from '../../domain/layout/result.ts';
import type { Job } from '../../domain/model.ts';
import { isSamePieces, layoutAsReleased, type SubstitutionSite } from '../../domain/substitution/site.ts';
import { connectedRuns } from '../../store/connected-runs.ts';
import type { Reader } from '../../store/database.ts';
import { readDesign } from '../../store/designs.ts';
import { inChunks } from '../../store/in-chunks.ts';
import { refuse } from '../refused.ts';

/** A damaged piece on its run as the floor has it. */
export interface PieceSite {
  readonly piece: { readonly id: string; readonly mark: string; readonly state: string; readonly placed: PlacedPiece };
  readonly run: {
    readonly id: string;
    readonly key: string;
    readonly version: number;
    readonly revision: number;
    readonly changed: boolean;
  };
  /** As released last. */
  readonly spec: RunDocument;
  readonly job: Job;
  readonly site: SubstitutionSite;
}

/** Tap-offs that nobody has set yet may still be moved on the floor. */
const NOT_HANGING: readonly string[] = ['planned', 'on-site'];

/** Reads a straight section that still stands; anything else is refused with what to do instead. */
export async function siteOf(reader: Reader, projectId: string, pieceId: string): Promise<PieceSite> {
  const row = await reader.piece.findFirst({ where: { projectId, id: pieceId } });
  if (row === null) return refuse({ code: 'not-found', what: 'piece' });
  if (row.retiredAt !== null)
    return refuse({
      code: 'work-refused',
      what: `Piece ${row.mark} has left the design`,
      remedy: 'It was replaced already: look at its run for what stands in its place.',
    });
  if (row.kind !== 'stock' && row.kind !== 'cut')
    return refuse({
      code: 'work-refused',
      what: `Piece ${row.mark} is no straight section`,
      remedy: 'An elbow or a tee is replaced by another of its kind and hand: order that one.',
    });
  const run = await reader.run.findUniqueOrThrow({
    where: { id: row.runId },
    select: { id: true, key: true, version: true, revision: true, changed: true },
  });
  const released = await reader.runRevision.findUniqueOrThrow({
    where: { runId_number: { runId: run.id, number: run.revision } },
    select: { spec: true, layout: true },
  });
  const spec = released.spec as unknown as RunDocument;
  const layout = released.layout as unknown as RunLayout;
  const placed = layout.pieces[row.ordinal];
  if (placed === undefined) throw new Error(`piece ${row.mark} has no place in revision ${run.revision} of its run`);
  const taps = await reader.tap.findMany({
    where: { runId: run.id, retiredAt: null, state: { notIn: [...NOT_HANGING] } },
    select: { key: true },
  });
  const hanging = new Set(taps.map(({ key }) => key));
  const around = await documentsAround(reader, projectId, run.key, spec);
  const found = around.map((document) => {
    const job = toModel(document);
    const model = job.runs.find(({ id }) => id === run.key);
    if (model === undefined) throw new Error(`run ${run.key} left the document that it was put into`);
    return { job, site: { run: model, context: contextFor(job, model), layout, index: row.ordinal, hanging } };
  });
  const fitting = found.find(({ site }) => isSamePieces(layoutAsReleased(site).pieces, layout.pieces)) ?? found.at(-1);
  if (fitting === undefined) throw new Error('no document was read around the run');
  return { piece: { id: row.id, mark: row.mark, state: row.state, placed }, run, spec, ...fitting };
}

/**
 * The run as released among what it is joined to: each as it was released too, with the branches that were not and without
 * them, since either may have been what its own release was laid out with; then all as they are designed now.
 */
async function documentsAround(
  reader: Reader,
  projectId: string,
  key: string,
  spec: RunDocument,
): Promise<readonly JobDocument[]> {
  const design = await readDesign(reader, projectId, await connectedRuns(reader, projectId, [key]));
  const rows = await inChunks(
    design.runs.map((run) => run.id),
    (chunk) =>
      reader.run.findMany({
        where: { projectId, key: { in: chunk }, revision: { gt: 0 } },
        select: { key: true, id: true, revision: true },
      }),
  );
  const specs = new Map<string, RunDocument>([[key, spec]]);
  for (const row of rows) {
    if (row.key === key) continue;
    const last = await reader.runRevision.findUniqueOrThrow({
      where: { runId_number: { runId: row.id, number: row.revision } },
      select: { spec: true },
    });
    specs.set(row.key, last.spec as unknown as RunDocument);
  }
  const released = design.runs.map((run) => specs.get(run.id) ?? run);
  const withoutDrafts = released.filter((run) => specs.has(run.id) || run.feed.fromRun !== key);
  const draft = design.runs.map((run) => (run.id === key ? spec : run));
  return [released, withoutDrafts, draft].map((runs) => ({ ...design, runs }));
}
