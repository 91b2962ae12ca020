import type { WalkItem } from '../../../../views/pages/field/run/walk-form.tsx';
import type { FieldRunPageProps } from '../../../../views/pages/field/run.tsx';
import type { FieldRun, ReleasedRun } from '../../../actions/boards/field/field-run.ts';
import type { UnitSystem } from '../../../domain/model.ts';
import { formatLength } from '../../../domain/units/format-length.ts';
import { shortMark } from './along.ts';

export function walksOf(
  { ownHangers }: FieldRun,
  { floor }: ReleasedRun,
  units: UnitSystem,
): FieldRunPageProps['walk'] {
  const place = (row: {
    readonly id: string;
    readonly version: number;
    readonly mark: string;
    readonly atU80: number;
  }): WalkItem => ({
    id: row.id,
    version: row.version,
    mark: shortMark(floor, row.mark),
    what: `at ${formatLength(row.atU80, units)}`,
  });
  const isAtPlan = ({ state }: { readonly state: string }) => state === 'planned';
  return {
    hangers: floor.supports.filter(isAtPlan).map(place),
    hangersToAccept: floor.supports.filter(({ id, state }) => state === 'set' && !ownHangers.has(id)).map(place),
    pieces: floor.pieces.filter(isAtPlan).map((row) => ({
      id: row.id,
      version: row.version,
      mark: shortMark(floor, row.mark),
      what: formatLength(row.toU80 - row.fromU80, units),
    })),
    taps: floor.taps.filter(isAtPlan).map((row) => place({ ...row, mark: row.key })),
  };
}
