import { z } from 'zod';
import { INSULATION_RULES } from '../../domain/quality/insulation/criterion.ts';
import { QUESTION_CODES } from '../../domain/quality/insulation/questions.ts';
import { RESISTANCE_UNITS } from '../../domain/quality/insulation/reading.ts';
import { distanceMm, name, text } from '../schema/fields.ts';
import { day, optionalNote, optionalText, tempC } from './record-fields.ts';

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

export const reading = z.discriminatedUnion('kind', [
  measured,
  z.strictObject({ kind: z.literal('blank') }),
  z.strictObject({ kind: z.literal('not-measured'), reason: optionalText('Why not') }),
  z.strictObject({ kind: z.literal('meter-fault'), note: optionalText('What the meter did') }),
]);

export const insulationTest = z.strictObject({
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
