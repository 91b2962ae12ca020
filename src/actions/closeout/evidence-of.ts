import type { RunDocument } from '../../document/job-document.ts';
import { toRun } from '../../document/model/to-run.ts';
import type { TapDocument } from '../../document/schema/tap.ts';
import type { InsulationStanding, RunEvidence } from '../../domain/closeout/evidence.ts';
import type { RunLayout } from '../../domain/layout/result.ts';
import { openEnds, runCard } from '../../domain/quality/end-card.ts';
import type { Verdict } from '../../domain/quality/insulation/verdict.ts';
import { isStale } from '../../domain/quality/stale.ts';
import type { JointState, PieceState, SupportState, TapState } from '../../domain/quality/states.ts';
import type { EvidencePage, EvidenceRun, ThingRow } from '../../store/closeout-evidence.ts';
import { draftMark } from './dossier-of.ts';
import { isTest, siteRecord } from './site-records.ts';

/** One run's rows as the closeout weighs them. `lastWork`: the last work on anything that the run is connected to. */
export function evidenceOf(run: EvidenceRun, page: EvidencePage, lastWork: string | null): RunEvidence {
  const rows = (page.records.get(run.id) ?? []).map((row) => ({ ...row, supersedesId: null }));
  const records = rows.map(siteRecord);
  const { feed, crossings } = toRun(run.spec as unknown as RunDocument);
  const card = runCard(openEnds(feed), records);
  const seals = card.reported.get('fire-seal') ?? 0;
  const needed = crossings.filter((crossing) => crossing.fireRatingMin > 0).length;
  const supported = new Set(
    records.flatMap(({ body, subjectId }) => (body.kind === 'drop-supported' ? [subjectId] : [])),
  );
  return {
    run: run.key,
    runId: run.id,
    revision: run.revision,
    changed: run.changed,
    ...(run.revision === 0 ? draftThings(run) : releasedThings(run, page, supported)),
    ends: card.ends.map(({ end, closed }) => ({ end, closed: closed !== null })),
    slotClosed: card.slot !== null,
    fireSeals: { needed, reported: seals === 'all' ? needed : seals },
    insulation: standingOf(newestTest(rows), lastWork),
    instruments: records.filter(isTest).map(({ id, body: { instrument } }) => ({
      id: instrument.id,
      calibrationDue: instrument.calibrationDue,
      testId: id,
    })),
  };
}

type RunThings = Pick<RunEvidence, 'pieces' | 'joints' | 'supports' | 'taps'>;

function releasedThings(run: EvidenceRun, page: EvidencePage, supported: ReadonlySet<string>): RunThings {
  return {
    pieces: evidence<PieceState>(page.pieces.get(run.id)),
    joints: evidence<JointState>(page.joints.get(run.id)),
    supports: evidence<SupportState>(page.supports.get(run.id)),
    taps: (page.taps.get(run.id) ?? []).map(({ id, key, state, spec }) => ({
      id,
      mark: `${run.key}-${key}`,
      state: state as TapState,
      dropSupported: hasDrop(spec) ? supported.has(id) : null,
    })),
  };
}

function evidence<State extends string>(rows: readonly ThingRow[] | undefined) {
  return (rows ?? []).map(({ id, mark, state }) => ({ id, mark, state: state as State }));
}

function hasDrop(spec: unknown): boolean {
  return (spec as TapDocument).dropMm !== undefined;
}

/** What a run that was never released would need: nothing of it has an identity yet, and all of it is asked for. */
function draftThings(run: EvidenceRun): RunThings {
  const layout = run.draft as unknown as RunLayout;
  const spec = run.spec as unknown as RunDocument;
  const draft = <State extends string>(count: number, letter: string, state: State) =>
    Array.from({ length: count }, (_, index) => ({
      id: run.id,
      mark: `${run.key}-${draftMark(letter, index)}`,
      state,
    }));
  return {
    pieces: draft(layout.pieces.length, 'P', 'planned'),
    joints: draft(layout.joints.length, 'J', 'open'),
    supports: draft(layout.supports.length, 'H', 'planned'),
    taps: (spec.taps ?? []).map((tap) => ({
      id: run.id,
      mark: `${run.key}-${tap.id}`,
      state: 'planned',
      dropSupported: hasDrop(tap) ? false : null,
    })),
  };
}

interface Test {
  readonly verdict: Verdict;
  readonly at: string;
}

/** By when it was made; of two made at one moment the one that reached the book later. */
function newestTest(
  rows: readonly { readonly kind: string; readonly at: Date; readonly outcome: string | null }[],
): Test | null {
  const tests = rows.filter((row) => row.kind === 'insulation-test');
  const last = tests.reduce<(typeof tests)[number] | null>(
    (best, test) => (best === null || test.at >= best.at ? test : best),
    null,
  );
  return last === null ? null : { verdict: (last.outcome ?? 'incomplete') as Verdict, at: last.at.toISOString() };
}

function standingOf(test: Test | null, lastWork: string | null): InsulationStanding {
  if (test === null) return { kind: 'missing' };
  switch (test.verdict) {
    case 'pass':
      return { kind: isStale(test.at, lastWork) ? 'stale' : 'passing' };
    case 'fail':
      return { kind: 'failed' };
    case 'information-only':
      return { kind: 'information-only' };
    case 'incomplete':
      return { kind: 'incomplete' };
  }
}
