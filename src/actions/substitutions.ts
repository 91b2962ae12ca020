import { toRun } from '../document/model/to-run.ts';
import type { FieldHold } from '../domain/model.ts';
import { withSections } from '../domain/substitution/held-layout.ts';
import type { SubstituteWay } from '../domain/substitution/substitute-way.ts';
import { substituteBy } from '../domain/substitution/substitutes.ts';
import { fromMm, toMm } from '../domain/units/length.ts';
import { connectedRuns } from '../store/connected-runs.ts';
import type { Tx } from '../store/database.ts';
import { releaseRows } from '../store/releases.ts';
import { audit } from './audit.ts';
import type { Context, Viewer } from './context.ts';
import { changeDesign } from './designs.ts';
import { once, type Submission } from './once.ts';
import { reach } from './reach.ts';
import { settleRuns } from './records/settle-runs.ts';
import { refuse } from './refused.ts';
import { CAUSE_WORDS, type SubstitutionInput, type SubstitutionView } from './substitution/input.ts';
import { keptDocument, keptDraft } from './substitution/kept-document.ts';
import { type PieceSite, siteOf } from './substitution/site-of.ts';
import { assertVersion } from './version.ts';

/**
 * Puts other sections in the place of one: a revision of the run marked as made in the field. Its drawing is the released one,
 * every other piece keeps identity and records, the damaged one is retired with its own, and the design is kept to the new
 * sections from now on. Of the design it is a step like any other; the revision itself stays.
 */
export async function substitute(
  context: Context,
  viewer: Viewer,
  projectId: string,
  pieceId: string,
  version: number,
  input: SubstitutionInput,
  submission: Submission | null,
): Promise<SubstitutionView> {
  return context.database.write((tx) =>
    once(tx, context, viewer, submission, async () => {
      await reach(tx, viewer, projectId, 'substitute');
      const at = await siteOf(tx, projectId, pieceId);
      assertVersion(at.run, version);
      const way = chosen(at, input.lengthsMm);
      const hold = way.run.fieldHold;
      if (hold === null) throw new Error('a way of substitution holds nothing');
      const { run, spec } = at;
      const reason = `${CAUSE_WORDS[input.cause]}: ${input.reason}`;
      await releaseRows(tx, {
        projectId,
        runs: [{ ...run, spec: keptDocument(spec, hold, way.moves), layout: way.layout }],
        reason,
        mark: 'field',
        byUserId: viewer.userId,
        at: context.clock(),
        newId: context.newId,
      });
      await keepDesign(tx, context, projectId, at, way, hold);
      await settleRuns(tx, projectId, [run.id], context.clock());
      await audit(tx, context, viewer, {
        chain: projectId,
        action: 'sections substituted',
        subject: 'run',
        subjectId: run.id,
        after: {
          piece: at.piece.mark,
          lengthsMm: input.lengthsMm,
          reason,
          revision: run.revision + 1,
          moved: way.moves.map(({ id, from, to }) => ({ tap: id, fromMm: toMm(from), toMm: toMm(to) })),
        },
      });
      const now = await tx.run.findUniqueOrThrow({ where: { id: run.id }, select: { version: true } });
      return { run: run.key, runId: run.id, revision: run.revision + 1, version: now.version };
    }),
  );
}

/** The way that was shown, worked again on what stands now. */
function chosen({ piece, site }: PieceSite, lengthsMm: readonly number[]): SubstituteWay {
  const way = substituteBy(site, lengthsMm.map(fromMm));
  if (way !== null && way.stops.length === 0) return way;
  if (way !== null) return refuse({ code: 'not-releasable', reasons: way.stops.map(({ message }) => message) });
  return refuse({
    code: 'work-refused',
    what: 'These sections are none of the ways',
    number: `${lengthsMm.join(' + ')} mm for ${piece.mark}, which is ${toMm(piece.placed.to - piece.placed.from)} mm.`,
    remedy: 'Choose one of the ways that are offered for this piece.',
  });
}

/** The design as it stands is kept to the same sections; what the office has changed in it is still to be released. */
async function keepDesign(
  tx: Tx,
  context: Context,
  projectId: string,
  { run, spec, piece }: PieceSite,
  way: SubstituteWay,
  hold: FieldHold,
): Promise<void> {
  const { from, to } = piece.placed;
  const isNew = (section: FieldHold['sections'][number]) => section.from >= from && section.to <= to;
  await changeDesign(tx, context, projectId, {
    scope: await connectedRuns(tx, projectId, [run.key]),
    change: (before) => ({
      ...before,
      runs: before.runs.map((draft) => {
        if (draft.id !== run.key) return draft;
        if (!run.changed) return keptDraft(draft, spec, hold, way.moves);
        // What the office holds in its own design stays its own; only what is new is put in.
        const sections = withSections(toRun(draft).fieldHold, hold.sections.filter(isNew));
        return keptDraft(draft, spec, { sections, supports: hold.supports }, way.moves);
      }),
    }),
  });
  await tx.run.update({ where: { id: run.id }, data: { changed: run.changed } });
}
