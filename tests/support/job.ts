import type { PlacedPiece, RunLayout } from '../../src/domain/layout/result.ts';
import type { BuswayType, Job, LabourActivity, LabourBook, Level, Run, Tap } from '../../src/domain/model.ts';
import { FOOT, fromMm, type Length } from '../../src/domain/units/length.ts';

/** Hand-made values for tests of the domain; all figures are invented. Lengths in feet for reading. */
export const feet = (value: number): Length => Math.round(value * FOOT);

export function aType(changes: Partial<BuswayType> = {}): BuswayType {
  return {
    id: 'demo-250A-3PN',
    sheet: null,
    ratedCurrentA: 250,
    ratedVoltageV: 600,
    poles: 3,
    neutral: 'full',
    hundredPercentRated: false,
    phaseOhmPerKm: { r: 0.295, x: 0.148 },
    neutralOhmPerKm: null,
    shortCircuitKA: 22,
    shortCircuitCycles: 3,
    weightKgPerM: 12.65,
    stockLengths: [feet(20), feet(10), feet(5)],
    factoryCut: null,
    feed: { joins: true, weightKg: 0 },
    support: {
      maxSpacing: feet(10),
      maxEndOverhang: feet(2),
      jointClear: feet(1),
      step: feet(0.25),
      fittingWithin: feet(2),
      source: 'demo sheet',
    },
    tap: { jointClear: feet(1.25), endClear: feet(1), minSpacing: null, boxLength: feet(1) },
    tapFront: { boxDepth: null, boxHeight: null, clearRoom: null },
    crossing: { jointClear: feet(2), supportClear: feet(0.5) },
    joint: { clamps: 2, contactSets: 1, bolts: 2, torqueNm: null, steps: null },
    elbow: { leg: feet(1), weightKg: null, handed: true },
    tee: { leg: feet(1), weightKg: null, handed: true },
    words: { clamp: null, contactSet: null, seatingTool: null },
    prices: {
      sections: [],
      sectionPerM: null,
      cutSurcharge: null,
      jointKit: null,
      elbow: null,
      tee: null,
      endFeed: null,
      endCap: null,
      support: null,
      tap: null,
      drop: null,
    },
    ...changes,
  };
}

export function aLevel(changes: Partial<Level> = {}, conditions: Partial<Level['conditions']> = {}): Level {
  return {
    id: 'F1',
    name: 'Floor 1',
    order: 1,
    elevation: null,
    structureHeight: null,
    conditions: {
      mountingHeight: fromMm(3600),
      congestion: 'open',
      liveArea: false,
      storeysAboveGrade: 0,
      ...conditions,
    },
    ...changes,
  };
}

export function aTap(changes: Partial<Tap> = {}): Tap {
  return {
    id: 'T1',
    place: { at: feet(1.75) },
    fixed: false,
    phases: 'L1',
    neutral: true,
    deviceA: 30,
    interruptingKA: null,
    load: { kind: 'A', amperes: 10 },
    powerFactor: 1,
    continuous: true,
    thirdHarmonic: 0,
    movablePhase: false,
    serves: null,
    pair: null,
    drop: feet(4),
    weightKg: null,
    ...changes,
  };
}

export function aRun(changes: Partial<Run> = {}, feed: Partial<Run['feed']> = {}): Run {
  return {
    id: 'F1-R1-A',
    level: 'F1',
    area: null,
    type: 'demo-250A-3PN',
    side: 'A',
    pairedRun: null,
    start: { x: 0, y: 0, z: 0 },
    hasStart: true,
    headingDeg: 0,
    conductorSide: 'left',
    feed: {
      kind: 'end',
      fromRun: null,
      at: null,
      branchSide: null,
      supply: null,
      deviceA: null,
      deviceHundredPercent: false,
      faultKA: null,
      xOverR: null,
      cable: null,
      terminations: 0,
      ...feed,
    },
    end: null,
    legs: [{ length: feet(70), turn: 'none', tapsMustFace: null }],
    crossings: [],
    noJoint: [],
    fieldHold: null,
    noSupport: [],
    structure: { kind: 'continuous' },
    drop: null,
    rod: null,
    rodStock: feet(10),
    attachment: null,
    supportCapacityKg: null,
    taps: [],
    ...changes,
  };
}

/** A sound layout of straight stock lengths, one after another from 0, with a joint before each but the first. */
export function aLayout(run: Run, stockFeet: readonly number[], changes: Partial<RunLayout> = {}): RunLayout {
  const pieces: PlacedPiece[] = [];
  for (const length of stockFeet) {
    const from = pieces.at(-1)?.to ?? 0;
    pieces.push({ from, to: from + feet(length), kind: 'stock', hand: null });
  }
  return {
    run: run.id,
    ok: true,
    length: pieces.at(-1)?.to ?? 0,
    pieces,
    joints: pieces.slice(1).map((piece) => ({ at: piece.from })),
    supports: [],
    taps: run.taps.flatMap((tap) => ('at' in tap.place ? [{ id: tap.id, at: tap.place.at, nearestLegal: null }] : [])),
    facing: [],
    path: [],
    cost: null,
    findings: [],
    ...changes,
  };
}

export const supportsAt = (...places: readonly number[]): RunLayout['supports'] =>
  places.map((place) => ({ at: feet(place), loadKg: 0, continuousLoadKg: 0 }));

export function anActivity(id: string, likely: number, changes: Partial<LabourActivity> = {}): LabourActivity {
  return { id, unit: 'each', low: 0.85 * likely, likely, high: 1.4 * likely, bands: [], factors: [], ...changes };
}

export function aLabourBook(changes: Partial<LabourBook> = {}): LabourBook {
  return {
    version: 'demo-1',
    policy: 'add',
    activities: [anActivity('joint', 0.6)],
    factors: { height: [], congestion: { open: 0, normal: 15, tight: 35 }, storeyPercentEach: 0, livePercent: 0 },
    jobConditions: [],
    learning: null,
    nonProductivePercent: 0,
    nonProductiveDay: null,
    crew: [],
    overtime: null,
    correlation: 0,
    trials: 1000,
    seed: 1,
    ...changes,
  };
}

export function aJob(changes: Partial<Job> = {}): Job {
  return {
    project: {
      number: 'T-1',
      name: 'Invented job',
      units: 'ft-in',
      currency: 'USD',
      codeBasis: 'NEC',
      codeEdition: null,
      industrial: false,
      frequencyHz: 60,
      voltageLL: 415,
      voltageLN: 240,
      voltageDropLimitPercent: 3,
      unbalanceLimitPercent: 10,
      ordering: null,
    },
    levels: [aLevel()],
    types: [aType()],
    runs: [aRun()],
    extras: [],
    labourBook: null,
    bid: null,
    ...changes,
  };
}
