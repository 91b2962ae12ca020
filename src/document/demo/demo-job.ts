import type { ExtraDocument } from '../schema/bid.ts';
import { DOCUMENT_FORMAT, type JobDocument } from '../schema/document.ts';
import type { LevelDocument } from '../schema/level.ts';
import type { ProjectDocument } from '../schema/project.ts';
import type { RunDocument } from '../schema/run.ts';
import { demoBid } from './demo-bid.ts';
import { demoLabourBook } from './demo-labour-book.ts';
import { type DemoPlace, demoStandardRun, MOUNTING_MM, STRUCTURE_MM } from './demo-run.ts';
import { demoLRun, demoTeeRuns, L_RUN, TEE_RUN } from './demo-special-runs.ts';
import { demoType } from './demo-type.ts';

const FLOORS = [1, 2, 3, 4] as const;
const ROWS = [1, 2, 3, 4, 5, 6] as const;
const STOREY_MM = 5_400;

/**
 * The demo job, all invented: four floors of twelve runs, six rows with an A-side and a B-side each. One run goes round
 * a corner through a fire wall (F3-R06-A); one has a tee, whose branch is the twelfth run of its floor (F1-R06-A).
 */
export function demoJob(): JobDocument {
  return {
    format: DOCUMENT_FORMAT,
    project: demoProject(),
    levels: FLOORS.map(demoLevel),
    buswayTypes: [demoType()],
    runs: FLOORS.flatMap(demoFloor),
    extras: demoExtras(),
    labourBook: demoLabourBook(),
    bid: demoBid(),
  };
}

export function demoProject(): ProjectDocument {
  return {
    number: 'DEMO-1',
    name: 'Plover Quay Block C (invented demo job)',
    client: 'An invented client',
    site: 'Plover Quay, an invented place',
    units: 'ft-in',
    currency: 'USD',
    timeZone: 'America/Chicago',
    codeBasis: 'NEC',
    codeEdition: '2023',
    industrial: false,
    frequencyHz: 60,
    voltageLL: 415,
    voltageLN: 240,
    voltageDropLimitPercent: 3,
    unbalanceLimitPercent: 10,
  };
}

export function demoLevel(floor: number): LevelDocument {
  return {
    id: `F${floor}`,
    name: `Floor ${floor}`,
    order: floor,
    elevationMm: (floor - 1) * STOREY_MM,
    structureHeightMm: STRUCTURE_MM,
    conditions: {
      mountingHeightMm: MOUNTING_MM,
      congestion: 'normal',
      liveArea: false,
      storeysAboveGrade: floor - 1,
    },
  };
}

function demoFloor(floor: number): RunDocument[] {
  return ROWS.flatMap((row) => demoRow(floor, row));
}

function demoRow(floor: number, row: number): RunDocument[] {
  const a: DemoPlace = { floor, row, side: 'A' };
  const b: DemoPlace = { floor, row, side: 'B' };
  if (isPlace(a, TEE_RUN)) return demoTeeRuns();
  return [isPlace(a, L_RUN) ? demoLRun() : demoStandardRun(a), demoStandardRun(b)];
}

function isPlace(one: DemoPlace, other: DemoPlace): boolean {
  return one.floor === other.floor && one.row === other.row && one.side === other.side;
}

function demoExtras(): ExtraDocument[] {
  return [
    { item: 'Seating tool', quantity: 4, unit: 'each', price: 38_000, note: 'One for each crew; invented price' },
    { item: 'Hookstick', quantity: 8, unit: 'each', price: 6_500, note: 'Two for each floor; invented price' },
    { item: 'Hoist wait for 20 ft sections', level: 'F4', quantity: 12, unit: 'run', hours: 0.5, note: 'Invented' },
  ];
}
