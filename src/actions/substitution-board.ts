import type { UnitSystem } from '../domain/model.ts';
import { boundariesOf, connectionsOf } from '../domain/quality/stale.ts';
import { compareRevisions } from '../domain/revision/compare-revisions.ts';
import type { RevisionDifference } from '../domain/revision/difference.ts';
import { isSamePieces } from '../domain/substitution/site.ts';
import type { SubstituteWay } from '../domain/substitution/substitute-way.ts';
import { type Substitutes, substitutes } from '../domain/substitution/substitutes.ts';
import { whatWouldFill } from '../domain/substitution/what-would-fill.ts';
import type { Reader } from '../store/database.ts';
import type { Context, Viewer } from './context.ts';
import { reach } from './reach.ts';
import { revised } from './revisions.ts';
import { type PieceSite, siteOf } from './substitution/site-of.ts';

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
