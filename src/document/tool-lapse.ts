import { z } from 'zod';
import { day, reason } from './records/record-fields.ts';

export const toolLapseSchema = z.strictObject({
  tool: z.string().trim().min(1).max(64).describe('The torque tool or instrument by the id in its records.'),
  lastGood: day('The last day on which it is known to have been good; "2026-05-09".'),
  cause: reason('How it was found out.'),
});
export type ToolLapse = z.infer<typeof toolLapseSchema>;

/** An entry that was made with the tool. */
export const touchedSchema = z.object({
  recordId: z.string(),
  subject: z.enum(['joint', 'run']),
  subjectId: z.string(),
  mark: z.string(),
  kind: z.string(),
  at: z.string(),
  by: z.string(),
  becomes: z
    .enum(['reopens', 'open-already', 'left-the-design'])
    .describe('What becomes of it: open already where the work does not rest on it any more.'),
});
export const toolLapseViewSchema = z.object({
  tool: z.string(),
  lastGood: z.string(),
  entries: z.array(touchedSchema).describe('Everything done with the tool after that day, in the order of the book.'),
  joints: z.number().int().describe('Joints that reopen.'),
  tests: z.number().int().describe('Insulation tests that count no longer.'),
});
export type ToolLapseView = z.infer<typeof toolLapseViewSchema>;
export type Touched = z.infer<typeof touchedSchema>;

export const toolUseSchema = z.object({
  tool: z.string(),
  entries: z.number().int(),
  first: z.string().describe('When it was first used here.'),
  last: z.string(),
  calibrationDue: z
    .array(z.string().nullable())
    .describe('What the records say of it; null where nobody knew the day.'),
});
export type ToolUse = z.infer<typeof toolUseSchema>;
