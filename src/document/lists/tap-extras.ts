import type { UnitSystem } from '../../domain/model.ts';
import { DISTANCE } from '../../domain/units/parse-length.ts';
import { parseWeight } from '../../domain/units/parse-quantity.ts';
import type { LengthUnit } from '../../domain/units/read-length.ts';
import type { TapDocument } from '../schema/tap.ts';
import { type Cell, readFigure, readLengthCell } from './cell.ts';
import type { TapColumn } from './columns.ts';
import type { RowTaker } from './row-taker.ts';
import { readYesNo } from './tap-cells.ts';
import { writeMm } from './write-mm.ts';

/** What few lists say of a tap-off: columns that are written only where some tap-off has an entry under them. */
export const EXTRA_COLUMNS = [
  'fixed',
  'interrupting kA',
  'continuous',
  'third harmonic',
  'phase may change',
  'drop',
  'weight',
] as const satisfies readonly TapColumn[];
export type ExtraColumn = (typeof EXTRA_COLUMNS)[number];

type Key = 'fixed' | 'interruptingKA' | 'continuous' | 'thirdHarmonic' | 'movablePhase' | 'dropMm' | 'weightKg';
export type Extras = Pick<TapDocument, Key>;

/** The entry of the document that each of these columns holds. */
export const EXTRA_KEYS: Readonly<Record<ExtraColumn, Key>> = {
  fixed: 'fixed',
  'interrupting kA': 'interruptingKA',
  continuous: 'continuous',
  'third harmonic': 'thirdHarmonic',
  'phase may change': 'movablePhase',
  drop: 'dropMm',
  weight: 'weightKg',
};

const readHarmonic = readFigure({ '': 1, '%': 0.01 }, 'a part of the fundamental from 0 to 1, such as 0.1 or 10 %');
const readKA = readFigure({ '': 1, ka: 1 }, 'the interrupting rating in kA, such as 22');

/** The cells under these columns; an empty one says nothing. `unit` is the one that the heading of the drop gives. */
export function readExtras(row: RowTaker<TapColumn>, units: UnitSystem, unit: LengthUnit | null): Extras {
  return given({
    fixed: row.take('fixed', readYesNo),
    interruptingKA: row.take('interrupting kA', readKA),
    continuous: row.take('continuous', readYesNo),
    thirdHarmonic: row.take('third harmonic', readHarmonic),
    movablePhase: row.take('phase may change', readYesNo),
    dropMm: row.take('drop', readLengthCell(units, unit, DISTANCE)),
    weightKg: row.take('weight', readWeight),
  });
}

function given(extras: { readonly [K in Key]: Extras[K] }): Extras {
  return Object.fromEntries(Object.entries(extras).filter(([, value]) => value !== undefined));
}

function readWeight(text: string): Cell<number> {
  const parsed = parseWeight(text);
  return parsed.ok ? { value: parsed.value } : { problem: parsed.problem, remedy: parsed.remedy };
}

/** The same cells as `readExtras` reads them. */
export function writeExtras(tap: TapDocument, units: UnitSystem): Readonly<Record<ExtraColumn, string>> {
  const yesNo = (value: boolean | undefined) => (value === undefined ? '' : value ? 'yes' : 'no');
  const figure = (value: number | undefined) => (value === undefined ? '' : String(value));
  return {
    fixed: yesNo(tap.fixed),
    'interrupting kA': figure(tap.interruptingKA),
    continuous: yesNo(tap.continuous),
    'third harmonic': figure(tap.thirdHarmonic),
    'phase may change': yesNo(tap.movablePhase),
    drop: writeMm(tap.dropMm, units),
    weight: tap.weightKg === undefined ? '' : `${tap.weightKg} kg`,
  };
}
