import type { Finding } from '../finding.ts';
import { tapRoom } from '../layout/legal-tap-places.ts';
import type { RunLayout } from '../layout/result.ts';
import { type Say, sayIn } from '../layout/say.ts';
import { sheetName } from '../layout/sheet-name.ts';
import { standingBars } from '../layout/tap-rules.ts';
import type { Project, UnpricedJob } from '../model.ts';
import { groupBy } from '../takeoff/group-by.ts';
import { barsOn, type Clash, clashOf, sweptBox, withRoom } from './clash.ts';
import { type NearGrid, nearGrid } from './near-grid.ts';
import { type Obstacle, obstaclesOf, type StandingRun, standingRuns } from './standing.ts';
import { type ClashingTap, clashWords } from './words.ts';

/**
 * Tap-offs whose boxes have too little room towards another run of their level, or another leg of their own: boxes in the
 * same space are a stop, less than the stated clear room before a box is a warning. One finding a tap, its worst; both taps
 * of a pair are told, each with its nearest legal place. Lengths in 1/80 mm. Needs `boxDepth` of a type, which is measured
 * from the busway's centre line; a job in which no type states it has no findings. `runs` narrows what is judged, not what
 * it is judged against.
 *
 * @example judgeFaceOff(job, layoutJob(job))
 */
export function judgeFaceOff(
  job: UnpricedJob,
  layouts: readonly RunLayout[],
  runs?: ReadonlySet<string>,
): readonly Finding[] {
  if (job.types.every((type) => type.tapFront.boxDepth === null)) return [];
  const isJudged = (run: string) => runs === undefined || runs.has(run);
  const levels = groupBy(standingRuns(job, layouts), ({ run }) => run.level);
  return levels.flatMap((standing) => judgeLevel(standing, job.project, isJudged));
}

function judgeLevel(
  standing: readonly StandingRun[],
  project: Project,
  isJudged: (run: string) => boolean,
): readonly Finding[] {
  if (standing.every(({ type }) => type.tapFront.boxDepth === null)) return [];
  const obstacles = standing.map(obstaclesOf);
  const around = nearGrid(
    obstacles.flat().map((one) => [withRoom(one.solid, one.tap?.clear ?? 0), one] as const),
    cellSize(standing),
  );
  return standing.flatMap((run, index) => {
    if (!isJudged(run.run.id)) return [];
    if (run.type.tapFront.boxDepth === null) return unknownDepth(run);
    const clashing = obstacles[index]!.flatMap((own) => clashAt(own, around));
    return clashing.length === 0 ? [] : findings(run, clashing, around, project);
  });
}

/** About the room that one box asks for: a question then looks at few cells, and a cell holds few things. */
function cellSize(standing: readonly StandingRun[]): number {
  const types = [...new Set(standing.map(({ type }) => type))];
  const most = (size: (type: StandingRun['type']) => number) => Math.max(...types.map(size));
  const out = most(({ tapFront }) => (tapFront.boxDepth ?? 0) + (tapFront.clearRoom ?? 0));
  return Math.max(
    1000,
    out,
    most(({ tap }) => tap.boxLength ?? 0),
  );
}

/** The worst of what a tap clashes with. */
function clashAt(own: Obstacle, around: NearGrid<Obstacle>): ClashingTap[] {
  if (own.tap === null) return [];
  const { tap, solid } = own;
  const clashes = around
    .near(withRoom(solid, tap.clear))
    .filter((other) => !isItself(own, other))
    .map((other) => clashOf(solid, tap.clear, other))
    .filter((clash) => clash !== null);
  const [worst] = clashes.sort((a, b) => weight(a) - weight(b) || b.needed - b.there - (a.needed - a.there));
  return worst === undefined ? [] : [{ tap, z: solid.z, worst, more: clashes.length - 1 }];
}

/** Taps on one stretch are told apart by their spacing; housing round the corner is the run's own. */
function isItself(own: Obstacle, other: Obstacle): boolean {
  if (own.run !== other.run) return false;
  const apart = Math.abs(own.stretch.order - other.stretch.order);
  return other.tap === null ? apart <= 1 : apart === 0;
}

const WEIGHTS = { overlap: 0, height: 1, room: 2 } as const;

/** A box before the housing behind it: who moves the tap moves it away from both. */
function weight({ kind, other }: Clash): number {
  return WEIGHTS[kind] * 2 + (other.tap === null ? 1 : 0);
}

function findings(
  run: StandingRun,
  clashing: readonly ClashingTap[],
  around: NearGrid<Obstacle>,
  project: Project,
): Finding[] {
  const say = sayIn(project.units);
  const legalFor = legalPlaces(run, around, say);
  return clashing.map((clashingTap) => {
    const { tap, worst } = clashingTap;
    const legal = legalFor(tap.id);
    return {
      rule: worst.kind === 'height' ? 'limit.unknown' : 'tap.face-off',
      severity: worst.kind === 'overlap' ? 'stop' : 'warning',
      run: run.run.id,
      at: tap.at,
      message: clashWords(run, clashingTap, legal, say),
      source: worst.kind === 'room' ? `${sheetName(run.type)}; ${roomSource(project)}` : sheetName(run.type),
    };
  });
}

/** Clauses from memory: check them in the edition in force. */
function roomSource({ codeBasis }: Project): string {
  const clause = codeBasis === 'NEC' ? 'NEC 110.26(A)' : 'IEC 60364-7-729';
  return `for work on live parts the local code's working space decides (${clause})`;
}

/** Nearest places of one tap that neither its own run nor anything across from it bars. */
function legalPlaces(run: StandingRun, around: NearGrid<Obstacle>, say: Say) {
  const { layout, type } = run;
  const setting = { run: run.run, type, length: layout.length, pieces: layout.pieces, joints: layout.joints };
  const across = run.stretches.flatMap((stretch) => {
    const swept = sweptBox(run, stretch);
    if (swept === null) return [];
    const own: Obstacle = { run, stretch, solid: swept, tap: { id: '', at: stretch.from, clear: 0 } };
    return around.near(swept).flatMap((other) => (isItself(own, other) ? [] : barsOn(run, stretch, other)));
  });
  const order = [...layout.taps].sort((a, b) => a.at - b.at);
  const rank = new Map(order.map(({ id }, index) => [id, index]));
  const room = tapRoom(
    setting,
    [...standingBars(setting, say), ...across],
    order.map(({ at }) => at),
  );
  return (id: string) => room.legalFor(rank.get(id) ?? 0);
}

/** Its level has types that state how far a box stands out; this one does not, so no room was checked for it. */
function unknownDepth({ run, type }: StandingRun): Finding[] {
  if (run.taps.length === 0) return [];
  const message =
    'How far the tap-off box stands out is not stated, and for other runs of this level it is: no room towards them ' +
    'was looked for. Enter it; until then this is unknown, not a pass.';
  return [{ rule: 'limit.unknown', severity: 'warning', run: run.id, at: null, message, source: sheetName(type) }];
}
