import { parseJobText } from '../../src/document/parse-text.ts';
import { printFigures } from '../../src/document/print-figures.ts';
import { toModel } from '../../src/document/to-model.ts';
import { figures } from '../../src/domain/figures.ts';

/**
 * Small job documents as text, and the figures that are printed for them: the pipeline of the headless command in one
 * process. All documents are metric, with round lengths and every limit stated, so that expected values come by hand.
 */
export type Json = JsonObject | Json[] | string | number | boolean | null;
/** A key that is undefined is left out of the text. */
export type JsonObject = { [key: string]: Json | undefined };

const PROJECT: JsonObject = {
  number: 'C-1',
  name: 'Invented job',
  units: 'metric',
  currency: 'EUR',
  codeBasis: 'NEC',
  frequencyHz: 50,
  voltageLL: 400,
  voltageLN: 230,
};

/** 10 kg/m, stock 3 m and 1.5 m, every limit stated and none of them in the way. */
export function aType(changes: JsonObject = {}): JsonObject {
  return {
    id: 'T',
    ratedCurrentA: 225,
    ratedVoltageV: 600,
    poles: 3,
    neutral: 'full',
    phaseOhmPerKm: { r: 0.3, x: 0.12 },
    shortCircuitKA: 22,
    weightKgPerM: 10,
    stockLengthsMm: [3000, 1500],
    factoryCut: null,
    feed: { joins: false, weightKg: 0 },
    support: { maxSpacingMm: 3000, maxEndOverhangMm: 600, jointClearMm: 0, stepMm: 50, fittingWithinMm: 10_000 },
    tap: { jointClearMm: 0, endClearMm: 0, minSpacingMm: 0, boxLengthMm: 1 },
    crossing: { jointClearMm: 0, supportClearMm: 0 },
    fittings: { elbow: { legMm: 300, weightKg: 0 }, tee: { legMm: 300, weightKg: 0 } },
    ...changes,
  };
}

export const leg = (lengthMm: number, turn = 'none', more: JsonObject = {}): JsonObject => ({
  lengthMm,
  turn,
  ...more,
});

export function aRun(changes: JsonObject = {}): JsonObject {
  return {
    id: 'R',
    level: 'F1',
    type: 'T',
    conductorSide: 'left',
    feed: { kind: 'end' },
    legs: [leg(6000)],
    supportCapacityKg: 10_000,
    ...changes,
  };
}

export function aTap(id: string, atMm: number, changes: JsonObject = {}): JsonObject {
  return { id, atMm, phases: 'L1', deviceA: 16, loadA: 5, weightKg: 0, ...changes };
}

export const aBranch = (id: string, fromRun: string, atMm: number, branchSide: string, changes: JsonObject = {}) =>
  aRun({ id, feed: { kind: 'tee', fromRun, atMm, branchSide }, ...changes });

export function aJob(changes: JsonObject = {}, project: JsonObject = {}): JsonObject {
  return {
    format: 'busway-jobbook/1',
    project: { ...PROJECT, ...project },
    levels: [{ id: 'F1', name: 'Floor 1', order: 1 }],
    buswayTypes: [aType()],
    runs: [aRun()],
    ...changes,
  };
}

/** A job of one run, or of these runs, of one type. */
export const jobOf = (type: JsonObject, ...runs: JsonObject[]): JsonObject => aJob({ buswayTypes: [type], runs });

export const activity = (likely: number, changes: JsonObject = {}): JsonObject => ({
  unit: 'each',
  low: likely,
  likely,
  high: likely,
  factors: [],
  ...changes,
});

export const aBook = (activities: JsonObject, changes: JsonObject = {}): JsonObject => ({
  version: 'c-1',
  policy: 'add',
  activities,
  ...changes,
});

export type Printed = ReturnType<typeof printFigures>;
export type PrintedRun = Printed['runs'][number];

/** What the command would print for this document, read back from the text. */
export function printed(job: JsonObject): Printed {
  return JSON.parse(printedText(JSON.stringify(job))) as Printed;
}

export function printedText(source: string): string {
  const parsed = parseJobText(new TextEncoder().encode(source));
  if (!parsed.ok) throw new Error(parsed.faults.map(({ path, message }) => `${path}: ${message}`).join('\n'));
  return JSON.stringify(printFigures(figures(toModel(parsed.document))), null, 2);
}

export function refusals(job: JsonObject): readonly { path: string; message: string; remedy: string }[] {
  const parsed = parseJobText(JSON.stringify(job));
  return parsed.ok ? [] : parsed.faults;
}

export const firstRun = (job: JsonObject): PrintedRun => printed(job).runs[0]!;

/** The pieces' lengths in order, fittings by their name: `[3000, 'elbow', 1500]`. */
export const piecesOf = (run: PrintedRun) =>
  run.layout.sections.map(({ fromMm, toMm, kind }) =>
    kind === 'stock' || kind === 'cut' ? Math.round((toMm - fromMm) * 80) / 80 : kind,
  );
export const jointsOf = (run: PrintedRun) => run.layout.joints.map(({ atMm }) => atMm);
export const supportsOf = (run: PrintedRun) => run.layout.supports.map(({ atMm }) => atMm);
export const rulesOf = ({ checks }: Printed) => checks.map(({ rule, severity }) => `${severity} ${rule}`);
export const checksOf = ({ checks }: Printed, rule: string) => checks.filter((check) => check.rule === rule);
export const quantityOf = ({ takeoff }: Printed, item: string, run?: string) =>
  takeoff
    .filter((line) => line.item === item && (run === undefined || line.run === run))
    .reduce((sum, { quantity }) => sum + quantity, 0);
