import type { JointState, PieceState, SupportState, TapState } from '../quality/states.ts';
import type { InsulationStanding, RunEvidence } from './evidence.ts';
import type { Gap, GapReason } from './gap.ts';
import type { RowId } from './readiness.ts';

/** Everything that a closeout asks of one run and the record does not hold, in the order of the rows and along the run. */
export function runGaps(run: RunEvidence): Gap[] {
  const { run: key, runId } = run;
  const whole = (row: RowId, reason: GapReason | null, mark = key, count = 1): Gap[] =>
    reason === null ? [] : [{ row, run: key, runId, subject: 'run', id: runId, mark, reason, count }];
  const each = <State extends string>(
    row: RowId,
    subject: Gap['subject'],
    things: readonly { readonly id: string; readonly mark: string; readonly state: State }[],
    judge: (state: State) => GapReason | null,
  ): Gap[] =>
    things.flatMap(({ id, mark, state }) => {
      const reason = judge(state);
      return reason === null ? [] : [{ row, run: key, runId, subject, id, mark, reason, count: 1 }];
    });
  const seals = Math.max(0, run.fireSeals.needed - run.fireSeals.reported);
  return [
    ...whole('released', releaseReason(run)),
    ...each('pieces', 'piece', run.pieces, pieceReason),
    ...each('joints', 'joint', run.joints, jointReason),
    ...each('supports', 'support', run.supports, supportReason),
    ...run.ends.flatMap(({ end, closed }) => whole('ends', closed ? null : 'end-open', `${key} ${end} end`)),
    ...whole('slot', run.slotClosed ? null : 'slot-open'),
    ...whole('fire-seals', seals === 0 ? null : 'not-sealed', key, seals),
    ...each('taps', 'tap', run.taps, tapReason),
    ...each('drops', 'tap', run.taps.filter(awaitsDrop), () => 'drop-not-supported'),
    ...whole('insulation', insulationReason(run.insulation)),
    ...run.instruments
      .filter(({ calibrationDue }) => calibrationDue === null)
      .map(
        ({ id, testId }): Gap => ({
          row: 'instruments',
          run: key,
          runId,
          subject: 'test',
          id: testId,
          mark: id,
          reason: 'calibration-unknown',
          count: 1,
        }),
      ),
  ];
}

function releaseReason({ revision, changed }: RunEvidence): GapReason | null {
  if (revision === 0) return 'not-released';
  return changed ? 'changed-since-release' : null;
}

function pieceReason(state: PieceState): GapReason | null {
  switch (state) {
    case 'accepted':
      return null;
    case 'quarantined':
      return 'quarantined';
    case 'hung':
    case 'joined':
      return 'joints-open';
    case 'planned':
    case 'on-site':
      return 'not-hung';
  }
}

function jointReason(state: JointState): GapReason | null {
  if (state === 'accepted') return null;
  return state === 'reopened' ? 'reopened' : 'not-accepted';
}

function supportReason(state: SupportState): GapReason | null {
  return state === 'planned' ? 'not-set' : null;
}

function tapReason(state: TapState): GapReason | null {
  switch (state) {
    case 'checked':
    case 'in-service':
    case 'removed':
      return null;
    case 'planned':
    case 'on-site':
      return 'not-set';
    case 'set':
      return 'not-checked';
  }
}

function awaitsDrop(tap: RunEvidence['taps'][number]): boolean {
  return tap.state !== 'removed' && tap.dropSupported === false;
}

function insulationReason({ kind }: InsulationStanding): GapReason | null {
  switch (kind) {
    case 'passing':
      return null;
    case 'missing':
      return 'test-missing';
    case 'failed':
      return 'test-failed';
    case 'incomplete':
      return 'test-incomplete';
    case 'information-only':
      return 'test-information-only';
    case 'stale':
      return 'test-stale';
  }
}
