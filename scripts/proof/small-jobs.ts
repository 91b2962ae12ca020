import type { BuswayTypeDocument, JobDocument, RunDocument, TapDocument } from '../../src/document/job-document.ts';
import type { Dice } from './dice.ts';

/** A job of one invented type, one level and the runs given: the frame of every small instance. */
export function smallJob(
  type: BuswayTypeDocument,
  runs: readonly RunDocument[],
  changes: Partial<JobDocument> = {},
): JobDocument {
  return {
    format: 'busway-jobbook/1',
    project: {
      number: 'P-1',
      name: 'Small instance of a proof (invented)',
      units: 'metric',
      currency: 'EUR',
      codeBasis: 'NEC',
      frequencyHz: 50,
      voltageLL: 400,
      voltageLN: 230.9,
    },
    levels: [{ id: 'F1', name: 'Floor 1', order: 1 }],
    buswayTypes: [type],
    runs: [...runs],
    ...changes,
  };
}

export function smallType(changes: Partial<BuswayTypeDocument>): BuswayTypeDocument {
  return {
    id: 'type',
    ratedCurrentA: 225,
    ratedVoltageV: 600,
    poles: 3,
    neutral: 'full',
    phaseOhmPerKm: { r: 0.3, x: 0.12 },
    shortCircuitKA: 22,
    weightKgPerM: 6.5,
    stockLengthsMm: [3000],
    factoryCut: null,
    ...changes,
  };
}

export function smallRun(changes: Partial<RunDocument> & Pick<RunDocument, 'legs'>): RunDocument {
  return { id: 'R1', level: 'F1', type: 'type', conductorSide: 'left', feed: { kind: 'end' }, ...changes };
}

export function smallTap(id: string, atMm: number, changes: Partial<TapDocument> = {}): TapDocument {
  return { id, atMm, phases: 'L1', deviceA: 16, loadA: 5, ...changes };
}

/** Different values out of a range, in no order. */
export function distinct(dice: Dice, count: number, low: number, high: number): number[] {
  const found = new Set<number>();
  while (found.size < count) found.add(dice.int(low, high));
  return [...found];
}
