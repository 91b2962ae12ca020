import { pairsOf } from '../../../src/domain/quality/insulation/pairs.ts';
import type { QualityRules } from '../../../src/domain/quality/project-rules.ts';
import type {
  Actor,
  InsulationTestBody,
  JointBody,
  NewRecord,
  RecordBody,
  SiteRecord,
  Subject,
} from '../../../src/domain/quality/record.ts';

/** The people of the invented job. */
export const IBE: Actor = { id: 'u-ibe', name: 'R. Ibe', role: 'installer' };
export const LUND: Actor = { id: 'u-lund', name: 'K. Lund', role: 'foreman' };
export const OKAFOR: Actor = { id: 'u-okafor', name: 'S. Okafor', role: 'inspector' };
export const WEISS: Actor = { id: 'u-weiss', name: 'T. Weiss', role: 'office' };

export const RULES: QualityRules = {
  secondPerson: 'all',
  timeZone: 'America/Chicago',
  units: 'ft-in',
  codeBasis: 'NEC',
};

/** A moment of the invented working day, Chicago summer time: `clock('15:10')`. */
export function clock(time: string, day = '2026-05-12'): string {
  return `${day}T${time}:00-05:00`;
}

let serial = 0;

export function asked<B extends RecordBody>(
  subject: Subject,
  at: string,
  body: B,
  more: Partial<Pick<NewRecord, 'id' | 'supersedes' | 'seenVersion' | 'subjectId'>> = {},
): NewRecord<B> {
  serial += 1;
  return {
    id: `r${serial}`,
    subject,
    subjectId: `${subject}-1`,
    at,
    supersedes: null,
    seenVersion: null,
    body,
    ...more,
  };
}

/** A record as it stands in the book, received when it was made. */
export function kept<B extends RecordBody>(record: NewRecord<B>, by: Actor, recordedAt = record.at): SiteRecord<B> {
  const { id, subject, subjectId, at, supersedes, body } = record;
  return { id, subject, subjectId, at, recordedAt, by: { id: by.id, name: by.name }, supersedes, outcome: null, body };
}

/** The demo's invented make-up of a joint, marked as the sheet of a type marks it. */
export const DEMO_STEPS = [
  'pieces, lots and conductor sides match',
  'lower clamp parked clear; pieces butted and aligned',
  'TORQUE: upper clamp centred, bolt tightened',
  'contact set of the right frame centred and pushed home',
  'HOLD: seating worked to both ends and seen, pole by pole',
  'seating tool out and counted',
  'TORQUE: lower clamp centred, bolt tightened',
  'CHECK: joint looked over by another person',
] as const;

export const DEMO_TYPE = {
  poles: 3,
  neutral: 'full',
  joint: { clamps: 2, contactSets: 1, bolts: 2, torqueNm: 20, steps: DEMO_STEPS },
} as const;

export const ALL_POLES = (['L1', 'L2', 'L3', 'N'] as const).map((pole) => ({ pole, near: true, far: true }));

export const GOOD_TORQUE = { value: 20, unit: 'Nm', toolId: 'T-03', calibrationDue: '2026-11-30' } as const;

type StepBody = Extract<JointBody, { readonly kind: 'joint-step' }>;

/** What is said when a step of the demo's joint is done as it should be. */
export function stepBody(step: number, more: Partial<StepBody> = {}): StepBody {
  const line: string = DEMO_STEPS[step] ?? '';
  return {
    kind: 'joint-step',
    step,
    text: line.replace(/^(HOLD|TORQUE|CHECK): /, ''),
    poles: line.startsWith('HOLD') ? ALL_POLES : null,
    torque: line.startsWith('TORQUE') ? GOOD_TORQUE : null,
    lots: null,
    note: null,
    ...more,
  };
}

/** A sheet on which every pair passes the acceptance rule on 70 ft. */
export const INSULATION_BODY: InsulationTestBody = {
  kind: 'insulation-test',
  rule: 'acceptance-1000ft',
  testVoltageV: 1000,
  durationS: 60,
  instrument: { id: 'M-02', calibrationDue: '2026-11-30', topRange: null },
  surfaceTempC: 22,
  ambientTempC: 21,
  humidityPercent: 45,
  lengthTyped: null,
  isolations: ['feeder lifted', 'neutral bond open'],
  readings: pairsOf({ poles: 3, neutral: 'full' }).map((pair) => ({
    pair,
    reading: { kind: 'value', comparator: '>', value: 5000, unit: 'MΩ', written: '5000' },
  })),
  confirmed: [],
  witness: null,
  note: null,
};
