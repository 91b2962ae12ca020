import { type CardOf, cardHref } from '../../../../views/components/card-href.ts';
import type { FieldRunPageProps } from '../../../../views/pages/field/run.tsx';
import type { ReleasedRun } from '../../../actions/boards/field/field-run.ts';
import type { JointState, PieceState, SupportState, TapState } from '../../../domain/quality/states.ts';

export function stripRecordOf(jobId: string, floor: ReleasedRun['floor']): FieldRunPageProps['record'] {
  const item = (of: CardOf) => (row: { readonly id: string; readonly mark: string }) => ({
    mark: row.mark,
    href: cardHref(jobId, of, row.id),
  });
  return {
    pieces: floor.pieces.map((row) => ({ ...item('piece')(row), state: row.state as PieceState })),
    joints: floor.joints.map((row) => ({ ...item('joint')(row), state: row.state as JointState })),
    supports: floor.supports.map((row) => ({ ...item('support')(row), state: row.state as SupportState })),
    taps: Object.fromEntries(
      floor.taps.map((row) => [
        row.key,
        { mark: row.key, href: cardHref(jobId, 'tap', row.id), state: row.state as TapState },
      ]),
    ),
  };
}
