import type { JobDocument } from '../schema/document.ts';
import type { TapDocument } from '../schema/tap.ts';
import { TAP_COLUMNS, type TapColumn } from './columns.ts';
import { writeMm } from './write-mm.ts';
import { writeTable } from './write-table.ts';

const HEADINGS: readonly TapColumn[] = [
  'run',
  'tap',
  'at',
  'phases',
  'neutral',
  'device',
  'load VA',
  'load A',
  'pf',
  'serves',
  'pair',
];

/** The job's taps as a list that `readTaps` reads: what the list has columns for, lengths in the project's units. */
export function writeTaps({ runs, project }: JobDocument): string {
  const write = (run: string, tap: TapDocument): Readonly<Record<TapColumn, string>> => ({
    run,
    tap: tap.id,
    at: tap.near
      ? `near ${writeMm(tap.near.xMm, project.units)}; ${writeMm(tap.near.yMm, project.units)}`
      : writeMm(tap.atMm, project.units),
    phases: tap.phases,
    neutral: tap.neutral === undefined ? '' : tap.neutral ? 'yes' : 'no',
    device: String(tap.deviceA),
    'load VA': tap.loadVA === undefined ? '' : String(tap.loadVA),
    'load A': tap.loadA === undefined ? '' : String(tap.loadA),
    pf: tap.powerFactor === undefined ? '' : String(tap.powerFactor),
    serves: tap.serves ?? '',
    pair: tap.pair ?? '',
  });
  const rows = runs.flatMap((run) => (run.taps ?? []).map((tap) => write(run.id, tap)));
  return writeTable(
    HEADINGS,
    rows.map((row) => HEADINGS.map((heading) => row[heading])),
  );
}

/** The headings of a list of taps, in their order, for a page that explains them. */
export const TAP_HEADINGS: readonly TapColumn[] = HEADINGS;
export const TAP_HEADINGS_NEEDED: readonly TapColumn[] = TAP_COLUMNS.required;
