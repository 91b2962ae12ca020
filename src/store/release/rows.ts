import type { RunDocument } from '../../document/job-document.ts';
import type { PlacedPiece, PlacedSupport, RunLayout } from '../../domain/layout/result.ts';
import type { Length } from '../../domain/units/length.ts';

export interface ReleasedRun {
  readonly id: string;
  readonly key: string;
  readonly revision: number;
  readonly spec: RunDocument;
  readonly layout: RunLayout;
}

export interface Release {
  readonly projectId: string;
  readonly runs: readonly ReleasedRun[];
  readonly reason: string;
  /** Sections were substituted on the floor; absent for a release of the office. */
  readonly mark?: 'field';
  readonly byUserId: string;
  readonly at: Date;
  readonly newId: () => string;
}

/** Where a thing gets its number in the run's marks, and its place in the run's order. */
export interface Turn {
  readonly number: number;
  readonly ordinal: number;
}

export function pieceRow(release: Release, run: ReleasedRun, piece: PlacedPiece, turn: Turn) {
  return {
    ...rowOf(release, run, 'P', turn),
    kind: piece.kind,
    hand: piece.hand,
    fromU80: piece.from,
    toU80: piece.to,
    state: 'planned',
    lot: null,
  };
}

export function jointRow(release: Release, run: ReleasedRun, joint: { readonly at: Length }, turn: Turn) {
  return { ...rowOf(release, run, 'J', turn), atU80: joint.at, state: 'open', stepsDone: 0 };
}

export function supportRow(release: Release, run: ReleasedRun, support: PlacedSupport, turn: Turn) {
  return {
    ...rowOf(release, run, 'H', turn),
    atU80: support.at,
    measuredU80: null,
    loadKg: support.loadKg,
    continuousLoadKg: support.continuousLoadKg,
    state: 'planned',
  };
}

export function tapRows({ projectId, newId }: Release, run: ReleasedRun) {
  const specs = new Map((run.spec.taps ?? []).map((tap) => [tap.id, tap]));
  return run.layout.taps.map((tap, ordinal) => ({
    id: newId(),
    projectId,
    runId: run.id,
    ordinal,
    key: tap.id,
    atU80: tap.at,
    spec: specs.get(tap.id),
    state: 'planned',
    stateAt: null,
    retiredAt: null,
    version: 1,
  }));
}

function rowOf({ projectId, newId }: Release, run: ReleasedRun, letter: string, { number, ordinal }: Turn) {
  const mark = `${run.key}-${letter}${String(number).padStart(2, '0')}`;
  return { id: newId(), projectId, runId: run.id, ordinal, mark, stateAt: null, retiredAt: null, version: 1 };
}
