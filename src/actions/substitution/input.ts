import { z } from 'zod';

export const CAUSES = ['damaged', 'late', 'missing', 'wrong-piece', 'other'] as const;
export type Cause = (typeof CAUSES)[number];

/** What stands before the foreman's own words in the revision's reason. */
export const CAUSE_WORDS: Readonly<Record<Cause, string>> = {
  damaged: 'Damaged',
  late: 'Late',
  missing: 'Missing',
  'wrong-piece': 'Wrong piece sent',
  other: 'Other',
};

export const substitutionSchema = z.strictObject({
  lengthsMm: z
    .array(z.number().positive())
    .min(2)
    .max(6)
    .describe('The sections in place of the piece, from the feed on: one of the ways that are offered.'),
  cause: z.enum(CAUSES),
  reason: z.string().trim().min(1).max(400).describe('What happened to the piece, in words.'),
});
export type SubstitutionInput = z.infer<typeof substitutionSchema>;

export const substitutionViewSchema = z.object({
  run: z.string(),
  runId: z.string(),
  revision: z.number().int().describe('The field revision that it made.'),
  version: z.number().int().describe('Of the run.'),
});
export type SubstitutionView = z.infer<typeof substitutionViewSchema>;
