import { z } from 'zod';
import { bidSchema, extraSchema } from './bid.ts';
import { buswayTypeSchema } from './busway-type.ts';
import { labourBookSchema } from './labour-book.ts';
import { levelSchema } from './level.ts';
import { projectSchema } from './project.ts';
import { runSchema } from './run.ts';

export const DOCUMENT_FORMAT = 'busway-jobbook/1';

/** The job document, version 1. It only checks: no value is changed, and no default is filled in. */
export const jobDocumentSchema = z
  .strictObject({
    format: z.literal(DOCUMENT_FORMAT).describe('The form of the file and its version'),
    project: projectSchema,
    levels: z.array(levelSchema).max(1_000).describe('The levels of the building'),
    buswayTypes: z.array(buswayTypeSchema).max(500).describe('The busway types that the runs name'),
    runs: z.array(runSchema).max(50_000).describe('The runs, in the order of the job'),
    extras: z.array(extraSchema).max(5_000).describe('Lines that the estimator adds by hand').optional(),
    labourBook: labourBookSchema.optional(),
    bid: bidSchema.optional(),
  })
  .meta({ id: 'JobDocument', description: "A whole job's design and estimate data in one file" });

export type JobDocument = z.infer<typeof jobDocumentSchema>;
