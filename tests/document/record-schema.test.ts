import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { type RecordInput, recordSchema } from '../../src/document/record-schema.ts';
import { toNewRecord } from '../../src/document/record-to-model.ts';
import { subjectOf } from '../../src/domain/quality/record.ts';
import { FOOT, fromMm } from '../../src/domain/units/length.ts';

const ENVELOPE = { submissionId: 'phone-4f1c-0001', at: '2026-05-12T08:10:00-05:00', subjectId: 'j-17' };

const BODIES: readonly (RecordInput['body'] & {
  readonly kind: Exclude<RecordInput['body']['kind'], 'record-withdrawn'>;
})[] = [
  { kind: 'piece-on-site' },
  { kind: 'piece-hung', conductorSide: 'left' },
  { kind: 'piece-quarantined', reason: 'crate 3 wet' },
  { kind: 'piece-released', as: 'office', reason: 'dry by readings' },
  { kind: 'joint-step', step: 0, text: 'pieces match' },
  { kind: 'joint-accepted' },
  { kind: 'joint-reopened', reason: 'pole N proud' },
  { kind: 'support-set', rodPlumb: true, loadNut: true, lockNut: true },
  { kind: 'support-accepted' },
  { kind: 'tap-on-site' },
  {
    kind: 'tap-set',
    isolation: {
      runIsolated: true,
      absenceOfVoltageProved: true,
      provedBy: 'K. Lund',
      provedAt: '2026-05-12T07:30:00-05:00',
    },
    device: { off: true, locked: true },
    steps: ['secured'],
    phasesFound: 'L2',
  },
  { kind: 'tap-checked' },
  { kind: 'drop-supported', distanceMm: 1828.8 },
  { kind: 'end-closed', end: 'far', capFitted: true, screwSet: true },
  { kind: 'end-opened', end: 'far', reason: 'to add a section' },
  { kind: 'slot-closed' },
  { kind: 'slot-opened', reason: 'tap-off moved' },
  { kind: 'activity-done', activity: 'label', quantity: 10 },
  {
    kind: 'insulation-test',
    rule: 'acceptance-1000ft',
    testVoltageV: 1000,
    instrument: { id: 'M-02', calibrationDue: '2026-11-30' },
    surfaceTempC: 22,
    readings: [
      { pair: 'L1-L2', reading: { kind: 'value', comparator: '>', value: 5000, unit: 'MΩ', written: '5000' } },
    ],
  },
];

const record = (body: RecordInput['body'], more: Partial<RecordInput> = {}) => ({
  ...ENVELOPE,
  subject: subjectOf(body.kind) ?? 'joint',
  body,
  ...more,
});
const faultsOf = (input: unknown) => {
  const result = recordSchema.safeParse(input);
  return result.success ? [] : result.error.issues.map(({ path }) => path.join('.'));
};

describe('a record of the floor', () => {
  test.each(BODIES)('$kind is taken with what is unknown left out', (body) => {
    expect(faultsOf(record(body))).toEqual([]);
  });

  test('what is left out stands as null, never as nought or false', () => {
    const parsed = recordSchema.parse(record({ kind: 'support-set', rodPlumb: true, loadNut: true, lockNut: true }));
    expect(parsed).toMatchObject({ seenVersion: null, supersedes: null, body: { measuredMm: null, note: null } });
  });

  test('an unknown key is refused, with its path', () => {
    expect(faultsOf(record({ kind: 'slot-closed', colour: 'red' } as never))).toEqual(['body']);
    expect(faultsOf({ ...record({ kind: 'slot-closed' }), by: 'somebody else' })).toEqual(['']);
  });

  test('a kind of record speaks of its own subject', () => {
    expect(faultsOf(record({ kind: 'slot-closed' }, { subject: 'joint' }))).toEqual(['subject']);
    expect(faultsOf(record({ kind: 'record-withdrawn' }, { subject: 'tap' }))).toEqual([]);
  });

  test('a time without its offset is no moment', () => {
    expect(faultsOf(record({ kind: 'slot-closed' }, { at: '2026-05-12T08:10:00' }))).toEqual(['at']);
  });

  test('the digits of a reading come to its figure', () => {
    const reading = { kind: 'value', comparator: '=', value: 500, unit: 'MΩ', written: '5000' } as const;
    const body = { ...BODIES.at(-1), readings: [{ pair: 'L1-L2', reading }] } as RecordInput['body'];
    expect(faultsOf(record(body))).toEqual(['body.readings.0.reading.written']);
  });

  test('0.00 keeps its digits', () => {
    const reading = { kind: 'value', comparator: '=', value: 0, unit: 'MΩ', written: '0.00' } as const;
    const body = { ...BODIES.at(-1), readings: [{ pair: 'N-G', reading }] } as RecordInput['body'];
    expect(recordSchema.parse(record(body)).body).toMatchObject({ readings: [{ reading: { written: '0.00' } }] });
  });

  test('reasons and causes are written out, and a negative length or reading is refused', () => {
    expect(faultsOf(record({ kind: 'joint-reopened', reason: '' }))).toEqual(['body.reason']);
    expect(faultsOf(record({ kind: 'slot-closed' }, { supersedes: { id: 'r1', cause: '' } }))).toEqual([
      'supersedes.cause',
    ]);
    expect(faultsOf(record({ kind: 'drop-supported', distanceMm: -1 }))).toEqual(['body.distanceMm']);
  });

  test('lengths become integers of 1/80 mm for the domain', () => {
    const set = recordSchema.parse(
      record({ kind: 'support-set', measuredMm: 5791.2, rodPlumb: true, loadNut: true, lockNut: true }),
    );
    expect(toNewRecord(set, 'r-1')).toMatchObject({
      id: 'r-1',
      subject: 'support',
      body: { kind: 'support-set', measured: 19 * FOOT },
    });
    const drop = recordSchema.parse(record({ kind: 'drop-supported', distanceMm: 1800 }));
    expect(toNewRecord(drop, 'r-2').body).toEqual({ kind: 'drop-supported', distance: fromMm(1800), note: null });
    const tested = recordSchema.parse(record({ ...BODIES.at(-1), lengthTypedMm: 30480 } as RecordInput['body']));
    expect(toNewRecord(tested, 'r-3').body).toMatchObject({ lengthTyped: 100 * FOOT });
  });

  test('a JSON Schema is published from it', () => {
    const schema = z.toJSONSchema(recordSchema, { io: 'input' });
    expect(schema.$defs?.Record).toMatchObject({
      required: ['submissionId', 'at', 'subject', 'subjectId', 'body'],
      additionalProperties: false,
    });
    expect(schema.$defs?.RecordBody).toMatchObject({ oneOf: { length: 20 } });
  });
});
