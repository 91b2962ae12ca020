import { stringify } from 'csv-stringify/sync';
import { type Length, toMm } from '../../domain/units/length.ts';
import type { RunDossier } from '../closeout/dossier.ts';
import type { Say } from '../closeout/say.ts';

export type Cell = string | number | null;

/** A list of the package: its columns, and the rows that one run adds. An empty cell is what nobody wrote down. */
export interface Register {
  /** File name in the package. */
  readonly file: string;
  readonly columns: readonly string[];
  readonly rowsOf: (dossier: RunDossier, say: Say) => Iterable<readonly Cell[]>;
}

/** Millimetres in a cell, exact to 0.0125. */
export function mm(length: Length | null): number | null {
  return length === null ? null : toMm(length);
}

/** Byte order mark: without it spreadsheets read UTF-8 as another set. */
const BOM = '\uFEFF';

export function registerHead({ columns }: Register): string {
  return BOM + lines([columns]);
}

export function registerRows(register: Register, dossier: RunDossier, say: Say): string {
  return lines([...register.rowsOf(dossier, say)]);
}

/** RFC 4180, with a cell that a spreadsheet would take for a formula made harmless by a quote mark before it. */
function lines(rows: readonly (readonly Cell[])[]): string {
  return rows.length === 0
    ? ''
    : stringify(
        rows.map((row) => [...row]),
        { escape_formulas: true, record_delimiter: 'windows' },
      );
}
