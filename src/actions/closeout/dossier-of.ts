import type { BuswayTypeDocument, ProjectDocument, RunDocument } from '../../document/job-document.ts';
import { toBuswayType } from '../../document/model/to-busway-type.ts';
import { toRun } from '../../document/model/to-run.ts';
import { toTap } from '../../document/model/to-tap.ts';
import type { TapDocument } from '../../document/schema/tap.ts';
import type { InsulationStanding } from '../../domain/closeout/evidence.ts';
import type { RunLayout } from '../../domain/layout/result.ts';
import type { BuswayType, Run } from '../../domain/model.ts';
import { openEnds, runCard } from '../../domain/quality/end-card.ts';
import { judgeInsulation } from '../../domain/quality/insulation-test.ts';
import { jointCard } from '../../domain/quality/joint-card.ts';
import { jointSheet } from '../../domain/quality/joint-sheet.ts';
import { pieceCard } from '../../domain/quality/piece-card.ts';
import type { SiteRecord } from '../../domain/quality/record.ts';
import type { JointState, PieceState, SupportState, TapState } from '../../domain/quality/states.ts';
import { supportCard } from '../../domain/quality/support-card.ts';
import { tapCard } from '../../domain/quality/tap-card.ts';
import { groupBy } from '../../domain/takeoff/group-by.ts';
import type {
  JointEntry,
  PieceEntry,
  RunDossier,
  SupportEntry,
  TapEntry,
  TestEntry,
} from '../../paper/closeout/dossier.ts';
import type { CloseoutRun } from '../../store/closeout-runs.ts';
import { isTest, siteRecord } from './site-records.ts';

/** A run as the closeout prints it: what was released, or the design as it stands where nothing was, with its records as cards. */
export function dossierOf(row: CloseoutRun, project: ProjectDocument, insulation: InsulationStanding): RunDossier {
  const released = row.revision === 0 ? undefined : row.revisions[0];
  const run = toRun((released?.spec ?? row.spec) as unknown as RunDocument);
  const layout = (released?.layout ?? row.layout) as unknown as RunLayout;
  const type = toBuswayType(row.type.spec as unknown as BuswayTypeDocument, project.units);
  const records = recordsBySubject(row);
  const whole = records.get(row.id) ?? [];
  return {
    run,
    levelName: row.level.name,
    type,
    revision: row.revision,
    changed: row.changed,
    releasedAt: released?.at.toISOString() ?? null,
    releaseReason: released?.reason ?? '',
    layout,
    pieces: pieceEntries(row, layout, records),
    joints: jointEntries(row, layout, records, type, project.timeZone ?? null),
    supports: supportEntries(row, layout, records),
    taps: tapEntries(row, run, layout, records),
    whole: runCard(openEnds(run.feed), whole),
    tests: testEntries(whole, layout, type, project),
    insulation,
  };
}

type BySubject = ReadonlyMap<string, readonly SiteRecord[]>;

function recordsBySubject(row: CloseoutRun): BySubject {
  const records = row.inspections.map(siteRecord);
  return new Map(groupBy(records, (record) => record.subjectId).map((group) => [group[0].subjectId, group]));
}

function pieceEntries({ pieces, revision }: CloseoutRun, layout: RunLayout, records: BySubject): PieceEntry[] {
  return layout.pieces.map((placed, index) => {
    const row = revision === 0 ? undefined : pieces[index];
    return {
      mark: row?.mark ?? draftMark('P', index),
      placed,
      state: (row?.state ?? 'planned') as PieceState,
      lot: row?.lot ?? null,
      card: pieceCard(records.get(row?.id ?? '') ?? []),
    };
  });
}

function jointEntries(
  row: CloseoutRun,
  layout: RunLayout,
  records: BySubject,
  type: BuswayType,
  timeZone: string | null,
): JointEntry[] {
  const sheet = jointSheet(type);
  return layout.joints.map(({ at }, index) => {
    const joint = row.revision === 0 ? undefined : row.joints[index];
    return {
      mark: joint?.mark ?? draftMark('J', index),
      at,
      state: (joint?.state ?? 'open') as JointState,
      card: jointCard(sheet, records.get(joint?.id ?? '') ?? [], timeZone),
    };
  });
}

function supportEntries({ supports, revision }: CloseoutRun, layout: RunLayout, records: BySubject): SupportEntry[] {
  return layout.supports.map(({ at, loadKg, continuousLoadKg }, index) => {
    const row = revision === 0 ? undefined : supports[index];
    return {
      mark: row?.mark ?? draftMark('H', index),
      at,
      measured: row?.measuredU80 ?? null,
      loadKg,
      continuousLoadKg,
      state: (row?.state ?? 'planned') as SupportState,
      card: supportCard(records.get(row?.id ?? '') ?? []),
    };
  });
}

/** Tap-offs keep their rows when they are removed in service, so the rows are listed and not the layout's. */
function tapEntries({ taps, revision }: CloseoutRun, run: Run, layout: RunLayout, records: BySubject): TapEntry[] {
  if (revision === 0) {
    const places = new Map(layout.taps.map((tap) => [tap.id, tap.at]));
    return run.taps.map((tap) => ({ at: places.get(tap.id) ?? 0, tap, state: 'planned', card: tapCard([]) }));
  }
  return taps.map((row) => ({
    at: row.atU80,
    tap: toTap(row.spec as unknown as TapDocument),
    state: row.state as TapState,
    card: tapCard(records.get(row.id) ?? []),
  }));
}

/** What a thing is called before its run is released: no number is promised yet, so the run's label stands apart. */
export function draftMark(letter: string, index: number): string {
  return `${letter}${String(index + 1).padStart(2, '0')}`;
}

/** Newest first. */
function testEntries(
  records: readonly SiteRecord[],
  layout: RunLayout,
  type: BuswayType,
  project: ProjectDocument,
): TestEntry[] {
  const replaced = new Set(records.flatMap((record) => (record.supersedes === null ? [] : [record.supersedes.id])));
  return records
    .filter(isTest)
    .reverse()
    .map((record) => ({
      record,
      standing: !replaced.has(record.id),
      judged: judgeInsulation({
        test: record.body,
        conductors: type,
        ratedVoltageV: type.ratedVoltageV,
        nominalVoltageV: project.voltageLL,
        length: layout.length,
        projectLimit: null,
        at: record.at,
        timeZone: project.timeZone ?? null,
      }),
    }));
}
