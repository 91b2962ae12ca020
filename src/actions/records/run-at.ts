import { decideEnd, type EndBody, type RunSite } from '../../domain/quality/decide-end.ts';
import { decideInsulationTest, type InsulationSite } from '../../domain/quality/decide-insulation.ts';
import type { Neighbour } from '../../domain/quality/decide-joint.ts';
import { openEnds, runCard } from '../../domain/quality/end-card.ts';
import type {
  Actor,
  InsulationTestBody,
  NewRecord,
  ReportedActivity,
  RunBody,
  RunEnd,
  SiteRecord,
  WithdrawnBody,
} from '../../domain/quality/record.ts';
import type { Reader, Tx } from '../../store/database.ts';
import type { FloorRun } from '../../store/floor-run.ts';
import { recordsOf } from '../../store/records.ts';
import { neighbour } from './joint-at.ts';
import { type Ruling, ruled } from './ruling.ts';

/** A run as a whole with all that judging a record on it takes. */
export interface RunAt {
  readonly floor: FloorRun;
  readonly records: readonly SiteRecord[];
  readonly site: RunSite;
  readonly insulation: InsulationSite;
}

/** Pieces of work in each activity that a record reports, from the labour budget. */
export type ReportedPieces = RunSite['pieces'];
export const NOTHING_BUDGETED: ReportedPieces = new Map<ReportedActivity, number>();

export async function runAt(
  reader: Reader,
  floor: FloorRun,
  now: string,
  pieces: ReportedPieces = NOTHING_BUDGETED,
): Promise<RunAt> {
  const ends = openEnds(floor.run.feed);
  const endRows = ends.map((end) => [end, pieceAtEnd(floor, end)] as const);
  const all = await recordsOf(reader, [floor.id, ...endRows.flatMap(([, piece]) => piece?.id ?? [])]);
  const records = all.get(floor.id) ?? [];
  const endPieces: Partial<Record<RunEnd, Neighbour>> = {};
  for (const [end, piece] of endRows) {
    if (piece !== undefined) endPieces[end] = neighbour(piece, all.get(piece.id) ?? []);
  }
  return {
    floor,
    records,
    site: { card: runCard(ends, records), endPieces, pieces, now, version: floor.version },
    insulation: insulationSite(floor, records, now),
  };
}

function pieceAtEnd({ pieces }: FloorRun, end: RunEnd) {
  return end === 'near' ? pieces[0] : pieces.at(-1);
}

function insulationSite(floor: FloorRun, records: readonly SiteRecord[], now: string): InsulationSite {
  const { type, layout, project } = floor;
  return {
    lockedRule: project.insulationRule,
    conductors: { poles: type.poles, neutral: type.neutral },
    ratedVoltageV: type.ratedVoltageV,
    nominalVoltageV: project.document.voltageLL,
    length: layout.length,
    projectLimit: null,
    timeZone: project.document.timeZone ?? null,
    records,
    now,
    version: floor.version,
  };
}

export function ruleRun(at: RunAt, record: NewRecord<RunBody | WithdrawnBody>, actor: Actor): Ruling {
  const { body } = record;
  if (body.kind === 'insulation-test') return ruleTest(at, { ...record, body });
  const save = (tx: Tx) => countUp(tx, at.floor);
  return ruled(decideEnd(at.site, { ...record, body: body satisfies EndBody | WithdrawnBody }, actor), () => ({
    state: null,
    save,
  }));
}

function ruleTest(at: RunAt, record: NewRecord<InsulationTestBody>): Ruling {
  return ruled(decideInsulationTest(at.insulation, record), ({ verdict }) => ({
    state: null,
    outcome: verdict,
    save: async (tx) => {
      await countUp(tx, at.floor);
      await lockRule(tx, at.floor, record.body.rule);
    },
  }));
}

async function countUp(tx: Tx, floor: FloorRun): Promise<void> {
  await tx.run.update({ where: { id: floor.id }, data: { version: { increment: 1 } } });
}

/** The first test of the job settles by which rule all of them are judged. */
async function lockRule(tx: Tx, { project }: FloorRun, rule: string): Promise<void> {
  if (project.insulationRule !== null) return;
  await tx.project.update({ where: { id: project.id }, data: { insulationRule: rule, version: { increment: 1 } } });
}
