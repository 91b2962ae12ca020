import type { RecordInput } from '../../src/document/record-schema.ts';
import type { FloorRun } from './floor.ts';

type Body = RecordInput['body'];

/** All figures are invented: a torque of the demo's sheet, a meter, readings and temperatures of one mild day. */
const CALIBRATED_UNTIL = '2099-12-31';
const TORQUE = { value: 24, unit: 'Nm', toolId: 'TW-04', calibrationDue: CALIBRATED_UNTIL } as const;
const CONDUCTORS = ['L1', 'L2', 'L3', 'N', 'G'] as const;
const POLES = ['L1', 'L2', 'L3', 'N'] as const;

export function jointStep(steps: readonly string[], step: number): Body {
  const text = steps[step]!;
  return {
    kind: 'joint-step',
    step,
    text,
    ...(text.startsWith('HOLD:') && { poles: POLES.map((pole) => ({ pole, near: true, far: true })) }),
    ...(text.startsWith('TORQUE:') && { torque: TORQUE }),
  };
}

export const isCheck = (text: string): boolean => text.startsWith('CHECK:');

export function tapSet(run: FloorRun, key: string, provedBy: string, provedAt: string): Body {
  return {
    kind: 'tap-set',
    isolation: { runIsolated: true, absenceOfVoltageProved: true, provedBy, provedAt },
    device: { off: true, locked: true },
    steps: ['Set into the slot', 'Turned home', 'Latched'],
    phasesFound: run.document.taps!.find(({ id }) => id === key)!.phases,
  };
}

/** Ten pairs of three phases, neutral and ground; each reading is the meter's greatest, a bound and no figure. */
export function insulationTest(run: FloorRun): Body {
  const pairs = CONDUCTORS.flatMap((a, i) => CONDUCTORS.slice(i + 1).map((b) => `${a}-${b}`));
  return {
    kind: 'insulation-test',
    rule: 'acceptance-1000ft',
    testVoltageV: 1_000,
    durationS: 60,
    instrument: { id: 'IR-02', calibrationDue: CALIBRATED_UNTIL, topRange: { value: 20, unit: 'GΩ' } },
    surfaceTempC: 21,
    ambientTempC: 21,
    humidityPercent: 45,
    lengthTypedMm: run.lengthMm,
    isolations: ['Feed open and locked', 'All tap-offs off'],
    readings: pairs.map((pair) => ({
      pair,
      reading: { kind: 'value', comparator: '>', value: 20, unit: 'GΩ', written: '20' },
    })),
    confirmed: [],
    witness: 'Frank Dune',
  };
}
