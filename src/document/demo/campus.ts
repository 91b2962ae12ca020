import { unsafeUniformIntDistribution } from 'pure-rand/distribution/UnsafeUniformIntDistribution';
import { xoroshiro128plus } from 'pure-rand/generator/XoroShiro';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';
import type { BuswayTypeDocument } from '../schema/busway-type.ts';
import { DOCUMENT_FORMAT, type JobDocument } from '../schema/document.ts';
import type { LevelDocument } from '../schema/level.ts';
import type { RunDocument } from '../schema/run.ts';
import type { TapDocument } from '../schema/tap.ts';
import { demoProject } from './demo-job.ts';
import { demoLabourBook } from './demo-labour-book.ts';
import { demoHangers, MOUNTING_MM, STRUCTURE_MM } from './demo-run.ts';
import { demoType } from './demo-type.ts';
import { feet, pounds } from './feet.ts';

export interface CampusSize {
  readonly runs: number;
  /** Equal seeds give equal campuses. */
  readonly seed: number;
}

const RUNS_A_LEVEL = 24;
const LEVELS_A_BUILDING = 4;
const ROW_PITCH_MM = 4_800;

/**
 * An invented job of any size for measuring and for tests: rows of paired runs, most of them straight, some round a
 * corner, some with a branch. About 8 sections and fittings and 20 taps a run; taps stand midway between the places
 * where stock sections of 5, 10 and 20 ft can join, so that a layout has nothing to refuse.
 */
export function campusJob({ runs, seed }: CampusSize): JobDocument {
  const rng = xoroshiro128plus(seed);
  return {
    format: DOCUMENT_FORMAT,
    project: { ...demoProject(), number: `CAMPUS-${seed}`, name: `Campus of ${runs} runs (invented, seed ${seed})` },
    levels: Array.from({ length: Math.ceil(runs / RUNS_A_LEVEL) }, (_, i) => campusLevel(i)),
    buswayTypes: campusTypes(),
    runs: Array.from({ length: Math.ceil(runs / 2) }, (_, i) => campusRow(i, rng))
      .flat()
      .slice(0, runs)
      .map((run, i) => withoutLostPair(run, i, runs)),
    labourBook: demoLabourBook(),
    bid: { taxPercent: 7, overheadPercent: 10, profit: { kind: 'margin', percent: 6 }, contingencyP: 80 },
  };
}

const SMALL = 'demo-250A-3PN';
/** Heavier and bought in shorter pieces, so that it takes more joints. */
const LARGE = 'demo-400A-3PN';

function campusTypes(): BuswayTypeDocument[] {
  const small = demoType();
  const heavy = { ratedCurrentA: 400, weightKgPerM: small.weightKgPerM * 1.5, stockLengthsMm: [feet(10), feet(5)] };
  const sections = small.prices?.sections?.filter(({ lengthMm }) => lengthMm <= feet(10));
  return [small, { ...small, ...heavy, id: LARGE, prices: { ...small.prices, sections } }];
}

function campusLevel(index: number): LevelDocument {
  const [building, floor] = [Math.floor(index / LEVELS_A_BUILDING) + 1, (index % LEVELS_A_BUILDING) + 1];
  return {
    id: levelId(index),
    name: `Building ${building}, floor ${floor}`,
    order: index + 1,
    elevationMm: (floor - 1) * 5_400,
    structureHeightMm: STRUCTURE_MM,
    conditions: { mountingHeightMm: MOUNTING_MM, congestion: 'normal', liveArea: false, storeysAboveGrade: floor - 1 },
  };
}

function levelId(index: number): string {
  return `B${Math.floor(index / LEVELS_A_BUILDING) + 1}-F${(index % LEVELS_A_BUILDING) + 1}`;
}

/** Two runs: the sides of a row, or now and then a run with a tee and its branch. */
function campusRow(row: number, rng: RandomGenerator): RunDocument[] {
  const chance = unsafeUniformIntDistribution(1, 10, rng);
  const type = unsafeUniformIntDistribution(0, 1, rng) === 0 ? SMALL : LARGE;
  const fives = unsafeUniformIntDistribution(18, 26, rng);
  if (chance === 1) return branchedRow(row, type, fives, rng);
  const first = { row, type, fives, corner: chance <= 3 ? unsafeUniformIntDistribution(8, 12, rng) : 0 };
  const loads = Array.from({ length: fives }, () => unsafeUniformIntDistribution(80, 240, rng) * 10);
  return [campusRun(first, 'A', loads), campusRun(first, 'B', loads)];
}

interface Row {
  readonly row: number;
  readonly type: string;
  /** Length in pieces of 5 ft, corner apart. */
  readonly fives: number;
  /** Pieces of 5 ft before the corner; 0 for a straight run. */
  readonly corner: number;
}

function campusRun({ row, type, fives, corner }: Row, side: 'A' | 'B', loads: readonly number[]): RunDocument {
  const base = campusBase(row, type, side);
  const gap = corner === 0 ? undefined : corner;
  return {
    ...base,
    pairedRun: runId(row, side === 'A' ? 'B' : 'A'),
    legs:
      gap === undefined
        ? [{ lengthMm: feet(5 * fives), turn: 'none' }]
        : [
            { lengthMm: feet(5 * gap + 1), turn: side === 'A' ? 'left' : 'right' },
            { lengthMm: feet(5 * (fives - gap) + 1), turn: 'none' },
          ],
    taps: loads.flatMap((va, i) => (isSkipped(i) ? [] : [campusTap(base.id, row, i, tapFeet(i, gap), va, true)])),
  };
}

function branchedRow(row: number, type: string, fives: number, rng: RandomGenerator): RunDocument[] {
  const parent = campusBase(row, type, 'A');
  const tee = 10;
  const branch = 14;
  const tapsOf = (id: string, count: number, gap?: number) =>
    Array.from({ length: count }, (_, i) => i)
      .filter((i) => !isSkipped(i))
      .map((i) => campusTap(id, row, i, tapFeet(i, gap), unsafeUniformIntDistribution(40, 120, rng) * 10, false));
  const branchId = `${parent.id}-BR`;
  return [
    { ...parent, legs: [{ lengthMm: feet(5 * fives + 2), turn: 'none' }], taps: tapsOf(parent.id, fives, tee) },
    {
      id: branchId,
      level: parent.level,
      type,
      side: 'A',
      conductorSide: 'right',
      feed: { kind: 'tee', fromRun: parent.id, atMm: feet(5 * tee + 1), branchSide: 'left' },
      legs: [{ lengthMm: feet(5 * branch + 1), turn: 'none' }],
      ...demoHangers(),
      taps: tapsOf(branchId, branch),
    },
  ];
}

function campusBase(row: number, type: string, side: 'A' | 'B'): Omit<RunDocument, 'legs' | 'taps'> {
  const level = levelId(Math.floor((row * 2) / RUNS_A_LEVEL));
  return {
    id: runId(row, side),
    level,
    type,
    side,
    start: { xMm: 0, yMm: (row % (RUNS_A_LEVEL / 2)) * ROW_PITCH_MM + (side === 'A' ? 600 : 0), zMm: MOUNTING_MM },
    headingDeg: 0,
    conductorSide: side === 'A' ? 'left' : 'right',
    feed: { kind: 'end', supply: `PDU-${level}-${side}`, deviceA: 250, faultKA: 18, xOverR: 4, terminations: 5 },
    ...demoHangers(),
  };
}

function runId(row: number, side: 'A' | 'B'): string {
  const level = levelId(Math.floor((row * 2) / RUNS_A_LEVEL));
  return `${level}-R${String((row % (RUNS_A_LEVEL / 2)) + 1).padStart(2, '0')}-${side}`;
}

/** One place in twelve stays empty. */
function isSkipped(place: number): boolean {
  return place % 12 === 11;
}

/** Midway in the `i`th piece of 5 ft; a fitting of 2 ft stands after `gap` pieces. */
function tapFeet(i: number, gap: number | undefined): number {
  return 5 * i + 2.5 + (gap !== undefined && i >= gap ? 2 : 0);
}

const PHASES = ['L1', 'L2', 'L3'] as const;

function campusTap(run: string, row: number, i: number, at: number, va: number, paired: boolean): TapDocument {
  const id = `T${String(i + 1).padStart(2, '0')}`;
  return {
    id,
    atMm: feet(at),
    phases: PHASES[i % 3] ?? 'L1',
    neutral: true,
    deviceA: 30,
    interruptingKA: 22,
    loadVA: va,
    powerFactor: 0.97,
    thirdHarmonic: 0.1,
    serves: `cabinet ${run}-${id}`,
    ...(paired && { pair: `R${row + 1}-C${i + 1}` }),
    dropMm: feet(4),
    weightKg: pounds(20),
  };
}

/** The last run of an odd campus has nobody to be paired with. */
function withoutLostPair(run: RunDocument, index: number, runs: number): RunDocument {
  const isAlone = runs % 2 === 1 && index === runs - 1;
  if (!isAlone) return run;
  const { pairedRun: _lost, ...alone } = run;
  return { ...alone, taps: alone.taps?.map(({ pair: _pair, ...tap }) => tap) };
}
