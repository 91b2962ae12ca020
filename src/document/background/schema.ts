import { z } from 'zod';
import { PICTURE_KINDS } from '../../domain/background/picture-kinds.ts';

const pixel = z.number().describe('From the top left corner of the picture: x to the right, y down.');
const mm = z.number().describe('In the level’s plan, as runs state their start: x to the east, y to the north.');

const pointSchema = z.strictObject({ pixelX: pixel, pixelY: pixel, xMm: mm, yMm: mm });

/** A calibration as it is kept: two pixels and the places that they show. */
export const calibrationSchema = z.strictObject({ points: z.tuple([pointSchema, pointSchema]) });
export type CalibrationDocument = z.infer<typeof calibrationSchema>;

/** A calibration as it is given: the second point by its place, or by its distance from the first. */
export const calibrationBodySchema = z.strictObject({
  points: z.tuple([pointSchema, pointSchema.partial({ xMm: true, yMm: true })]),
  distanceMm: z
    .number()
    .optional()
    .describe('From the first point to the second, in place of the second’s xMm and yMm.'),
  headingDeg: z
    .number()
    .optional()
    .describe(
      'With distanceMm: the way from the first point to the second, 0 east, 90 north. Left out: the picture’s top is north.',
    ),
});
export type CalibrationBody = z.infer<typeof calibrationBodySchema>;

/** What is told of the picture under a level’s plan. */
export const backgroundViewSchema = z.object({
  levelId: z.string(),
  version: z.number().int(),
  name: z.string().describe('Of the file that was sent.'),
  kind: z.enum(PICTURE_KINDS).describe('What the file was, by its bytes.'),
  page: z.number().int().describe('Of a PDF; 1 else.'),
  pages: z.number().int(),
  otherPages: z.boolean().describe('Whether another page of the PDF can still be chosen: until one is calibrated.'),
  widthPx: z.number().int(),
  heightPx: z.number().int(),
  bytes: z.number().int().describe('Of the PNG that is kept.'),
  sha256: z.string().describe('Of the PNG that is kept.'),
  dotsPerInch: z.number().nullable().describe('At which a page of a PDF was drawn.'),
  by: z.string(),
  at: z.string(),
  calibration: calibrationSchema
    .extend({
      mmPerPixel: z.number(),
      turnedDeg: z.number().describe('Anticlockwise, so that the picture lies in plan with north up.'),
      sheetScale: z.number().nullable().describe('n of 1:n, of the paper that a PDF’s page is.'),
      notes: z.array(z.string()).describe('What is odd about it and worth a second look.'),
    })
    .nullable(),
});
export type BackgroundView = z.infer<typeof backgroundViewSchema>;
