import { z } from 'zod';
import { CONDUCTORS } from '../domain/quality/conductors.ts';
import { INSULATION_RULES } from '../domain/quality/insulation/criterion.ts';
import { QUESTION_CODES } from '../domain/quality/insulation/questions.ts';
import { RESISTANCE_UNITS } from '../domain/quality/insulation/reading.ts';
import { REPORTED_ACTIVITIES, subjectOf } from '../domain/quality/record.ts';
import { distanceMm, name, note, side, text } from './schema/fields.ts';
import { PHASE_SETS } from './schema/tap.ts';

/**
 * Records of the floor as the API takes them and the book keeps them. Lengths are mm, times ISO 8601 with an offset, days
 * "2026-05-12". What a person left out is null, which is unknown and never nought.
 */
const at = (what: string) => z.iso.datetime({ offset: true }).describe(what);
const day = (what: string) => z.iso.date().describe(what);
const ticked = (what: string) => z.boolean().describe(what);
const optionalText = (what: string) => text(what).nullable().default(null);
const optionalNote = note('Anything worth telling').nullable().default(null);
const reason = (what: string) => note(what).min(3);
const tempC = (what: string) => z.number().min(-90).max(200).describe(what);

const pieceOnSite = z.strictObject({ kind: z.literal('piece-on-site'), lot: optionalText('Lot or crate') });

const pieceHung = z.strictObject({
  kind: z.literal('piece-hung'),
  conductorSide: side('Side of the conductors, seen along increasing distance with the slot down'),
  endsConfirmedBy: name('Second person who saw the side at both ends').nullable().default(null),
});

const pieceQuarantined = z.strictObject({
  kind: z.literal('piece-quarantined'),
  reason: reason('What is wrong with the piece'),
});

const pieceReleased = z
  .strictObject({
    kind: z.literal('piece-released'),
    as: z.enum(['office', 'inspector']).describe('The role in which this signature is given'),
    reason: reason('Why the piece may be used'),
    decision: optionalText('The written decision: document and date'),
  })
  .describe('One of the two signatures that release takes: office and inspector, each under the own login');

const jointStep = z.strictObject({
  kind: z.literal('joint-step'),
  step: z.number().int().min(0).max(59).describe('Step of the sheet, from 0'),
  text: note("The step's words as they were shown").min(1),
  poles: z
    .array(
      z.strictObject({
        pole: z.enum(CONDUCTORS).describe('Pole of the contact set'),
        near: ticked('Seen seated at the end towards the feed'),
        far: ticked('Seen seated at the end away from the feed'),
      }),
    )
    .max(CONDUCTORS.length)
    .nullable()
    .default(null)
    .describe('At the hold point: every pole, seen at both ends'),
  torque: z
    .strictObject({
      value: z.number().gt(0).max(10_000).describe('Torque applied'),
      unit: z.enum(['Nm', 'lbf-ft']).describe('Unit of the torque'),
      toolId: text('The torque tool').min(1),
      calibrationDue: day("Last day of the tool's calibration"),
    })
    .nullable()
    .default(null),
  lots: z
    .strictObject({ contactSet: optionalText('Lot of the contact set'), clamp: optionalText('Lot of the clamps') })
    .nullable()
    .default(null),
  note: optionalNote,
});

const jointAccepted = z.strictObject({
  kind: z.literal('joint-accepted'),
  differencesRead: z
    .boolean()
    .default(false)
    .describe("Torques that differ from the sheet's, which states no tolerance, were read"),
  note: optionalNote,
});

const jointReopened = z.strictObject({
  kind: z.literal('joint-reopened'),
  reason: reason('Why the joint was opened or has to be made again'),
  fromStep: z
    .number()
    .int()
    .min(0)
    .max(59)
    .nullable()
    .default(null)
    .describe('First step to do again, from 0; null is all of them'),
});

const supportSet = z.strictObject({
  kind: z.literal('support-set'),
  measuredMm: distanceMm('Distance from the feed as measured, mm').nullable().default(null),
  rodPlumb: ticked('Rod plumb'),
  loadNut: ticked('Load nut set'),
  lockNut: ticked('Lock nut set'),
  note: optionalNote,
});

const tapSet = z.strictObject({
  kind: z.literal('tap-set'),
  isolation: z.strictObject({
    runIsolated: ticked('Run isolated'),
    absenceOfVoltageProved: ticked('Absence of voltage proved, tester proved before and after'),
    provedBy: name('Who proved it').min(1),
    provedAt: at('When it was proved'),
  }),
  device: z.strictObject({ off: ticked('Device off'), locked: ticked('Device locked') }),
  steps: z.array(text("A step of the tap-off's own sheet").min(1)).max(40).describe('Steps done, in order'),
  phasesFound: z.enum(PHASE_SETS).describe('Phases as found on the tap-off'),
  note: optionalNote,
});

const dropSupported = z.strictObject({
  kind: z.literal('drop-supported'),
  distanceMm: distanceMm('From the tap-off to the first tension take-up support, along the cord, mm'),
  note: optionalNote,
});

const end = z.enum(['near', 'far']).describe('End of the run: near is distance 0');

const resistance = z.strictObject({
  value: z.number().min(0).max(1e9).describe('Figure'),
  unit: z.enum(RESISTANCE_UNITS).describe('Unit'),
});

const measured = z
  .strictObject({
    kind: z.literal('value'),
    comparator: z.enum(['=', '>']).describe('`>`: a bound, the resistance is more than the figure'),
    value: resistance.shape.value,
    unit: resistance.shape.unit,
    written: z
      .string()
      .regex(/^\d{1,12}(\.\d{1,6})?$/)
      .describe('The digits as written, "0.00"'),
  })
  .refine(({ value, written }) => Number(written) === value, {
    path: ['written'],
    error: 'The digits do not come to the figure.',
  });

const reading = z.discriminatedUnion('kind', [
  measured,
  z.strictObject({ kind: z.literal('blank') }),
  z.strictObject({ kind: z.literal('not-measured'), reason: optionalText('Why not') }),
  z.strictObject({ kind: z.literal('meter-fault'), note: optionalText('What the meter did') }),
]);

const insulationTest = z.strictObject({
  kind: z.literal('insulation-test'),
  rule: z.enum(INSULATION_RULES).describe('The rule that judges the test; the same for all tests of a project'),
  testVoltageV: z.number().int().min(50).max(10_000).describe('Test voltage, V DC'),
  durationS: z.number().int().min(1).max(3600).nullable().default(null).describe('How long each pair was held, s'),
  instrument: z.strictObject({
    id: text('The test set').min(1),
    calibrationDue: day('Last day of its calibration').nullable().default(null),
    topRange: resistance.nullable().default(null).describe('The most that it can show'),
  }),
  surfaceTempC: tempC('Temperature of the housing, °C').nullable().default(null),
  ambientTempC: tempC('Temperature of the air, °C').nullable().default(null),
  humidityPercent: z.number().min(0).max(100).nullable().default(null).describe('Relative humidity, %'),
  lengthTypedMm: distanceMm("Length on the tester's sheet, mm").nullable().default(null),
  isolations: z.array(text('What was isolated, lifted or taken off').min(1)).max(40).default([]),
  readings: z.array(z.strictObject({ pair: z.string().min(1).max(8).describe('Pair, "L1-L2"'), reading })).max(30),
  confirmed: z
    .array(z.enum(QUESTION_CODES))
    .max(QUESTION_CODES.length)
    .default([])
    .describe('Doubtful figures that stand as written'),
  witness: name('Who witnessed the test').nullable().default(null),
  note: optionalNote,
});

export const recordBodySchema = z
  .discriminatedUnion('kind', [
    pieceOnSite,
    pieceHung,
    pieceQuarantined,
    pieceReleased,
    jointStep,
    jointAccepted,
    jointReopened,
    supportSet,
    z.strictObject({ kind: z.literal('support-accepted'), note: optionalNote }),
    z.strictObject({ kind: z.literal('tap-on-site'), lot: optionalText('Lot or crate') }),
    tapSet,
    z.strictObject({ kind: z.literal('tap-checked'), note: optionalNote }),
    dropSupported,
    z.strictObject({
      kind: z.literal('end-closed'),
      end,
      capFitted: ticked('Cap fitted'),
      screwSet: ticked('Screw set'),
    }),
    z.strictObject({ kind: z.literal('end-opened'), end, reason: reason('Why the end was opened') }),
    z.strictObject({ kind: z.literal('slot-closed'), note: optionalNote }),
    z.strictObject({ kind: z.literal('slot-opened'), reason: reason('Why the slot was opened') }),
    z.strictObject({
      kind: z.literal('activity-done'),
      activity: z.enum(REPORTED_ACTIVITIES).describe('Work that only a record can say is done'),
      quantity: z
        .number()
        .int()
        .min(1)
        .max(10_000)
        .nullable()
        .default(null)
        .describe('Pieces done; null is all of the run'),
      note: optionalNote,
    }),
    insulationTest,
    z.strictObject({ kind: z.literal('record-withdrawn') }).describe('Takes back the record named by `supersedes`'),
  ])
  .meta({ id: 'RecordBody', description: 'What was done or found, by kind' });
export type RecordDocument = z.output<typeof recordBodySchema>;

export const recordSchema = z
  .strictObject({
    submissionId: z
      .string()
      .regex(/^[A-Za-z0-9_-]{8,64}$/)
      .describe('Made by the device, so that a record sent twice is kept once'),
    at: at('When it was done; not in the future'),
    subject: z.enum(['piece', 'joint', 'support', 'tap', 'run']).describe('What the record speaks of'),
    subjectId: z.string().min(1).max(64).describe('Its permanent id'),
    seenVersion: z
      .number()
      .int()
      .min(1)
      .nullable()
      .default(null)
      .describe('Version of the subject on the screen; null where unknown'),
    supersedes: z
      .strictObject({
        id: z.string().min(1).max(64).describe('The record that this one replaces'),
        cause: reason('Why'),
      })
      .nullable()
      .default(null),
    body: recordBodySchema,
  })
  .refine(({ subject, body }) => (subjectOf(body.kind) ?? subject) === subject, {
    path: ['subject'],
    error: 'This kind of record speaks of another subject.',
  })
  .meta({ id: 'Record', description: 'One record of the floor: appended, never changed' });
export type RecordSubmission = z.output<typeof recordSchema>;
/** As a caller may write it, with what is unknown left out. */
export type RecordInput = z.input<typeof recordSchema>;
