import { describe, expect, test } from 'vitest';
import type { JobDocument } from '../../src/document/job-document.ts';
import { toModel } from '../../src/document/to-model.ts';
import { fullDocument } from './full-document.ts';

function bareDocument(units: 'ft-in' | 'metric'): JobDocument {
  return {
    format: 'busway-jobbook/1',
    project: {
      number: '1',
      name: 'Bare',
      units,
      currency: 'USD',
      codeBasis: 'NEC',
      frequencyHz: 60,
      voltageLL: 208,
      voltageLN: 120,
    },
    levels: [{ id: 'F1', name: 'Floor 1', order: 1 }],
    buswayTypes: [
      {
        id: 't',
        ratedCurrentA: 225,
        ratedVoltageV: 600,
        poles: 3,
        neutral: 'full',
        phaseOhmPerKm: { r: 0.3, x: 0.12 },
        shortCircuitKA: 22,
        weightKgPerM: 6.5,
        stockLengthsMm: [1524, 3048, 1524],
        factoryCut: null,
        fittings: { elbow: { legMm: 305 } },
      },
    ],
    runs: [
      {
        id: 'r',
        level: 'F1',
        type: 't',
        conductorSide: 'left',
        feed: { kind: 'end', cable: { lengthM: 5, ohmPerKm: { r: 0.2, x: 0.1 } } },
        legs: [{ lengthMm: 3048, turn: 'none' }],
        crossings: [{ atMm: 1000, thicknessMm: 200, kind: 'wall' }],
        taps: [
          { id: '1', atMm: 600, phases: 'L1', deviceA: 20, loadVA: 100 },
          { id: '2', atMm: 900, phases: 'L1-L2', deviceA: 20, loadA: 5 },
          { id: '3', near: { xMm: 1, yMm: -2 }, phases: 'L1-L2-L3', deviceA: 20, loadA: 5 },
        ],
      },
    ],
    labourBook: { version: '1', policy: 'add', activities: {} },
  };
}

describe('the defaults of the contract', () => {
  const job = toModel(bareDocument('ft-in'));
  const [type] = job.types;
  const [run] = job.runs;

  test('of the project: preferences of 3 % drop and 10 % unbalance, not industrial', () => {
    expect(job.project).toMatchObject({
      voltageDropLimitPercent: 3,
      unbalanceLimitPercent: 10,
      industrial: false,
      codeEdition: null,
    });
  });

  test('of a level: open, not live, no storeys', () => {
    expect(job.levels[0]).toMatchObject({
      elevation: null,
      structureHeight: null,
      conditions: { mountingHeight: null, congestion: 'open', liveArea: false, storeysAboveGrade: 0 },
    });
  });

  test('of a type: two clamps, one contact set, two bolts, a feed that does not join, handed fittings', () => {
    expect(type).toMatchObject({
      hundredPercentRated: false,
      feed: { joins: false, weightKg: null },
      joint: { clamps: 2, contactSets: 1, bolts: 2, torqueNm: null, steps: null },
      elbow: { handed: true, weightKg: null },
      tee: null,
      sheet: null,
      neutralOhmPerKm: null,
    });
  });

  test('of the step of supports: one inch, or 50 mm in a metric job', () => {
    expect(type?.support.step).toBe(25.4 * 80);
    expect(toModel(bareDocument('metric')).types[0]?.support.step).toBe(50 * 80);
  });

  test('of limits that the sheet does not state: unknown, never a figure', () => {
    expect(type?.support).toMatchObject({
      maxSpacing: null,
      maxEndOverhang: null,
      jointClear: null,
      fittingWithin: null,
    });
    expect(type?.tap).toEqual({ jointClear: null, endClear: null, minSpacing: null, boxLength: null });
    expect(type?.tapFront).toEqual({ boxDepth: null, boxHeight: null, clearRoom: null });
    expect(type?.crossing).toEqual({ jointClear: null, supportClear: null });
  });

  test('of prices: unknown, never nought', () => {
    expect(type?.prices).toMatchObject({ sections: [], sectionPerM: null, tap: null, jointKit: null });
  });

  test('of a run: no terminations, 10 ft rod stock, one parallel set', () => {
    expect(run).toMatchObject({
      side: null,
      pairedRun: null,
      headingDeg: 0,
      start: { x: 0, y: 0, z: 0 },
      hasStart: false,
      end: null,
      rodStock: 3048 * 80,
      structure: { kind: 'continuous' },
      feed: { terminations: 0, deviceHundredPercent: false, faultKA: null, xOverR: null, cable: { parallel: 1 } },
    });
    expect(run?.crossings[0]?.fireRatingMin).toBe(0);
  });

  test('of a tap: power factor 1, continuous, free to move, and a neutral for one pole only', () => {
    expect(run?.taps.map((tap) => tap.neutral)).toEqual([true, false, false]);
    expect(run?.taps[0]).toMatchObject({
      fixed: false,
      powerFactor: 1,
      continuous: true,
      thirdHarmonic: 0,
      movablePhase: false,
    });
  });

  test('of the labour book: 10 000 trials, seed 1, no correlation, and nothing added that is not stated', () => {
    expect(job.labourBook).toMatchObject({
      trials: 10_000,
      seed: 1,
      correlation: 0,
      nonProductivePercent: 0,
      nonProductiveDay: null,
      crew: [],
      overtime: null,
      learning: null,
      factors: { height: [], congestion: { open: 0, normal: 0, tight: 0 }, storeyPercentEach: 0, livePercent: 0 },
    });
    expect(toModel({ ...bareDocument('metric'), labourBook: undefined }).labourBook).toBeNull();
  });
});

describe('what is stated is taken as stated', () => {
  const job = toModel(fullDocument());

  test('lengths become eightieths of a millimetre, exactly', () => {
    expect(job.types[0]?.factoryCut).toEqual({ min: 610 * 80, max: 3048 * 80, step: 127 });
    expect(job.runs[0]?.legs).toEqual([
      { length: 1_463_040, turn: 'left', tapsMustFace: 'left' },
      { length: 829_056, turn: 'none', tapsMustFace: null },
    ]);
    expect(job.runs[0]?.start).toEqual({ x: 0, y: -8000, z: 288_000 });
    expect(job.runs[0]?.hasStart).toBe(true);
  });

  test('stock lengths stand longest first, each once', () => {
    expect(job.types[0]?.stockLengths).toEqual([3048 * 80, 1524 * 80]);
  });

  test('bands and heights stand shortest first', () => {
    expect(job.labourBook?.activities[0]?.bands.map((band) => band.upTo)).toEqual([1524 * 80, 3048 * 80]);
    expect(job.labourBook?.factors.height.map((height) => height.percent)).toEqual([10, 20]);
  });

  test('a tap has one place and one load, whichever way they were given', () => {
    expect(job.runs[0]?.taps.map((tap) => [tap.place, tap.load])).toEqual([
      [{ at: 128_000 }, { kind: 'VA', va: 4200 }],
      [{ near: { x: 40_000, y: 960_000 } }, { kind: 'A', amperes: 12 }],
    ]);
  });

  test('the rest is carried over unchanged', () => {
    expect(job).toMatchObject({
      project: { number: 'T-104', units: 'ft-in', codeEdition: '2023', voltageLL: 208 },
      types: [{ neutralOhmPerKm: { r: 0.15, x: 0.1 }, joint: { clamps: 3, torqueNm: 20 }, tee: { handed: false } }],
      extras: [
        { item: 'Hookstick', price: 6503, hours: 0.5 },
        { item: 'Credit', level: null, hours: null },
      ],
      labourBook: {
        policy: 'compound',
        correlation: 0.5,
        trials: 5000,
        seed: 7,
        learning: { activities: ['section'] },
      },
    });
    expect(job.runs[0]).toMatchObject({
      side: 'A',
      pairedRun: 'F1-R1-B',
      feed: { kind: 'centre', at: 720_000, supply: 'PDU-3', deviceA: 225, faultKA: 18, cable: { parallel: 2 } },
      structure: { kind: 'grid', pitch: 96_000, offset: 8000 },
      rod: '3/8',
      attachment: 'trapeze',
    });
  });
});

test('a document that was not checked is our own mistake, and is thrown', () => {
  const document = fullDocument();
  const [run] = document.runs;
  const unchecked = { ...document, runs: [{ ...run!, taps: [{ id: 'T', phases: 'L1' as const, deviceA: 20 }] }] };
  expect(() => toModel(unchecked)).toThrow('has no place');
});
