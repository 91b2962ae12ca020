import type { JobDocument } from '../schema/document.ts';
import type { TapDocument } from '../schema/tap.ts';
import { TAP_COLUMNS, type TapColumn } from './columns.ts';
import { EXTRA_COLUMNS, EXTRA_KEYS, type ExtraColumn, writeExtras } from './tap-extras.ts';
import { writeMm } from './write-mm.ts';
import { writeTable } from './write-table.ts';

const HEADINGS: readonly Exclude<TapColumn, ExtraColumn>[] = [
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

/**
 * The job's taps as a list that `readTaps` reads, lengths in the project's units. Of the columns that few lists have
 * (`EXTRA_COLUMNS`) only those are written that some tap has an entry for.
 */
export function writeTaps({ runs, project }: JobDocument): string {
  const { units } = project;
  const rows = runs.flatMap((run) => (run.taps ?? []).map((tap) => rowOf(run.id, tap, units)));
  const taps = runs.flatMap((run) => run.taps ?? []);
  const extras = EXTRA_COLUMNS.filter((column) => taps.some((tap) => tap[EXTRA_KEYS[column]] !== undefined));
  const headings: readonly TapColumn[] = [...HEADINGS, ...extras];
  return writeTable(
    headings,
    rows.map((row) => headings.map((heading) => row[heading])),
  );
}

function rowOf(
  run: string,
  tap: TapDocument,
  units: JobDocument['project']['units'],
): Readonly<Record<TapColumn, string>> {
  return {
    run,
    tap: tap.id,
    at: tap.near ? `near ${writeMm(tap.near.xMm, units)}; ${writeMm(tap.near.yMm, units)}` : writeMm(tap.atMm, units),
    phases: tap.phases,
    neutral: tap.neutral === undefined ? '' : tap.neutral ? 'yes' : 'no',
    device: String(tap.deviceA),
    'load VA': tap.loadVA === undefined ? '' : String(tap.loadVA),
    'load A': tap.loadA === undefined ? '' : String(tap.loadA),
    pf: tap.powerFactor === undefined ? '' : String(tap.powerFactor),
    serves: tap.serves ?? '',
    pair: tap.pair ?? '',
    ...writeExtras(tap, units),
  };
}

/** The headings of a list of taps, in their order, for a page that explains them. */
export const TAP_HEADINGS: readonly TapColumn[] = [...HEADINGS, ...EXTRA_COLUMNS];
export const TAP_HEADINGS_NEEDED: readonly TapColumn[] = TAP_COLUMNS.required;
