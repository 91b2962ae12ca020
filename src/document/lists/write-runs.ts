import type { JobDocument } from '../schema/document.ts';
import type { RunDocument } from '../schema/run.ts';
import { RUN_COLUMNS, type RunColumn } from './columns.ts';
import { writeFeed } from './feed-cell.ts';
import { writeMm } from './write-mm.ts';
import { writeTable } from './write-table.ts';

const HEADINGS: readonly RunColumn[] = [
  'run',
  'level',
  'area',
  'type',
  'side',
  'paired run',
  'conductor side',
  'feed',
  'x',
  'y',
  'z',
  'heading',
  'leg lengths',
  'turns',
  'rod',
  'drop',
];

/** The job's runs as a list that `readRuns` reads: what the list has columns for, lengths in the project's units. */
export function writeRuns({ runs, project }: JobDocument): string {
  const write = (run: RunDocument): Readonly<Record<RunColumn, string>> => ({
    run: run.id,
    level: run.level,
    area: run.area ?? '',
    type: run.type,
    side: run.side ?? '',
    'paired run': run.pairedRun ?? '',
    'conductor side': run.conductorSide,
    feed: writeFeed(run.feed, project.units),
    x: writeMm(run.start?.xMm, project.units),
    y: writeMm(run.start?.yMm, project.units),
    z: writeMm(run.start?.zMm, project.units),
    heading: run.headingDeg === undefined ? '' : String(run.headingDeg),
    'leg lengths': run.legs.map((leg) => writeMm(leg.lengthMm, project.units)).join('; '),
    turns: run.legs
      .slice(0, -1)
      .map((leg) => leg.turn)
      .join('; '),
    rod: run.rod ?? '',
    drop: writeMm(run.dropMm, project.units),
  });
  const rows = runs.map(write);
  return writeTable(
    HEADINGS,
    rows.map((row) => HEADINGS.map((heading) => row[heading])),
  );
}

/** The headings of a list of runs, in their order, for a page that explains them. */
export const RUN_HEADINGS: readonly RunColumn[] = HEADINGS;
export const RUN_HEADINGS_NEEDED: readonly RunColumn[] = RUN_COLUMNS.required;
