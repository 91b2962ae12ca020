import { z } from 'zod';
import type { FieldHold, UnitSystem } from '../domain/model.ts';
import { boundariesOf, connectionsOf } from '../domain/quality/stale.ts';
import { compareRevisions } from '../domain/revision/compare-revisions.ts';
import type { RevisionDifference } from '../domain/revision/difference.ts';
import { withSections } from '../domain/substitution/held-layout.ts';
import { isSamePieces } from '../domain/substitution/site.ts';
import type { SubstituteWay } from '../domain/substitution/substitute-way.ts';
import { type Substitutes, substitutes } from '../domain/substitution/substitutes.ts';
import { whatWouldFill } from '../domain/substitution/what-would-fill.ts';
import { fromMm, toMm } from '../domain/units/length.ts';
import { connectedRuns } from '../store/connected-runs.ts';
import type { Reader, Tx } from '../store/database.ts';
import { releaseRows } from '../store/releases.ts';
import { audit } from './audit.ts';
import type { Context, Viewer } from './context.ts';
import { changeDesign } from './designs.ts';
import { once, type Submission } from './once.ts';
import { reach } from './reach.ts';
import { settleRuns } from './records/settle-runs.ts';
import { refuse } from './refused.ts';
import { revised } from './revisions.ts';
import { keptDocument, keptDraft } from './substitution/kept-document.ts';
import { type PieceSite, siteOf } from './substitution/site-of.ts';
import { assertVersion } from './version.ts';

export const CAUSES = ['damaged', 'late', 'missing', 'wrong-piece', 'other'] as const;
export type Cause = (typeof CAUSES)[number];

/** What stands before the foreman's own words in the revision's reason. */
export const CAUSE_WORDS: Readonly<Record<Cause, string>> = {
  damaged: 'Damaged',
  late: 'Late',
  missing: 'Missing',
  'wrong-piece': 'Wrong piece sent',
  other: 'Other',
};

export const substitutionSchema = z.strictObject({
  lengthsMm: z
    .array(z.number().positive())
    .min(2)
    .max(6)
    .describe('The sections in place of the piece, from the feed on: one of the ways that are offered.'),
  cause: z.enum(CAUSES),
  reason: z.string().trim().min(1).max(400).describe('What happened to the piece, in words.'),
});
export type SubstitutionInput = z.infer<typeof substitutionSchema>;

export const substitutionViewSchema = z.object({
  run: z.string(),
  runId: z.string(),
  revision: z.number().int().describe('The field revision that it made.'),
  version: z.number().int().describe('Of the run.'),
});
export type SubstitutionView = z.infer<typeof substitutionViewSchema>;

/** A joint, hanger or tap-off of the run as it stands, for words about what happens to it. */
export interface StandingThing {
  readonly mark: string;
  readonly state: string;
  readonly at: number;
}

export interface OfferedWay extends SubstituteWay {
  readonly difference: RevisionDifference;
}

export interface SubstitutionBoard extends Pick<PieceSite, 'piece' | 'run'> {
  readonly type: string;
  readonly units: UnitSystem;
  readonly open: readonly OfferedWay[];
  readonly stopped: readonly OfferedWay[];
  readonly barred: Substitutes['barred'];
  readonly zones: Substitutes['zones'];
  readonly layout: PieceSite['site']['layout'];
  readonly model: PieceSite['site']['run'];
  /** Why nothing can be chosen and what would do; null where something can. */
  readonly wouldFill: string | null;
  /** Today's rules give the run other hangers than it was released with, substitution or not. */
  readonly hangersDiffer: boolean;
  readonly joints: readonly StandingThing[];
  readonly supports: readonly StandingThing[];
}

/** The ways to fill the place of one section of a released run, each with what it does to the run. Nothing is written. */
export async function substitutionBoard(
  context: Context,
  viewer: Viewer,
  projectId: string,
  pieceId: string,
): Promise<SubstitutionBoard> {
  const { db } = context.database;
  await reach(db, viewer, projectId, 'substitute');
  const at = await siteOf(db, projectId, pieceId);
  const { piece, run, site } = at;
  const found = substitutes(site);
  const supportsOf = ({ supports }: typeof site.layout) => supports.map((support) => support.at).join();
  return {
    piece,
    run,
    type: site.context.type.id,
    units: site.context.project.units,
    open: found.open.map((way) => offered(at, way)),
    stopped: found.stopped.map((way) => offered(at, way)),
    barred: found.barred,
    zones: found.zones,
    layout: site.layout,
    model: site.run,
    wouldFill: whatWouldFill(site, found),
    hangersDiffer:
      isSamePieces(found.before.pieces, site.layout.pieces) && supportsOf(found.before) !== supportsOf(site.layout),
    ...(await standingThings(db, run.id)),
  };
}

async function standingThings(reader: Reader, runId: string) {
  const where = { where: { runId, retiredAt: null }, orderBy: { ordinal: 'asc' as const } };
  const joints = await reader.joint.findMany(where);
  const supports = await reader.support.findMany(where);
  const thing = ({ mark, state, atU80 }: { mark: string; state: string; atU80: number }) => ({
    mark,
    state,
    at: atU80,
  });
  return { joints: joints.map(thing), supports: supports.map(thing) };
}

function offered({ job, site }: PieceSite, way: SubstituteWay): OfferedWay {
  const keys = job.runs.map((one) => one.id);
  const boundary = boundariesOf(keys, connectionsOf(job.runs)).get(site.run.id) ?? [site.run.id];
  const before = revised(job, { run: site.run, layout: site.layout });
  return { ...way, difference: compareRevisions(before, revised(job, way), boundary) };
}

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
  const name = lengthsMm.map(fromMm).join();
  const { open, stopped } = substitutes(site);
  const way = open.find((one) => one.lengths.join() === name);
  if (way !== undefined) return way;
  const stops = stopped.find((one) => one.lengths.join() === name)?.stops;
  if (stops !== undefined) return refuse({ code: 'not-releasable', reasons: stops.map(({ message }) => message) });
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
        const sections = withSections(heldIn(draft), hold.sections.filter(isNew));
        return keptDraft(draft, spec, { sections, supports: hold.supports }, way.moves);
      }),
    }),
  });
  await tx.run.update({ where: { id: run.id }, data: { changed: run.changed } });
}

function heldIn({ fieldHold }: Parameters<typeof keptDocument>[0]): FieldHold | null {
  if (fieldHold === undefined) return null;
  const sections = fieldHold.sections.map(({ fromMm: from, toMm: to, kind }) => ({
    from: fromMm(from),
    to: fromMm(to),
    kind,
  }));
  return { sections, supports: fieldHold.supportsMm.map(fromMm) };
}
