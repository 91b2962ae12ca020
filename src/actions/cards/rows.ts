import { z } from 'zod';
import { JOINT_STATES, PIECE_STATES, SUPPORT_STATES, TAP_STATES } from '../../domain/quality/states.ts';
import { toMm } from '../../domain/units/length.ts';
import type { JointRow, PieceRow, SupportRow, TapRow } from '../../store/floor-run.ts';

/** What every row of the floor says of itself. */
const shared = {
  id: z.string(),
  version: z.number().int(),
  run: z.string().describe('The run in the job document, "F1-R1-A".'),
  runId: z.string(),
  level: z.string(),
  mark: z.string().describe('What it is called on labels.'),
  stateAt: z.string().nullable().describe('When its state came about.'),
  retired: z.boolean().describe('It has left the design; its records stay.'),
};

export const sectionRowSchema = z.object({
  ...shared,
  kind: z.enum(['stock', 'cut', 'elbow', 'tee']),
  hand: z.string().nullable(),
  fromMm: z.number(),
  toMm: z.number(),
  lengthMm: z.number(),
  state: z.enum(PIECE_STATES),
  lot: z.string().nullable(),
});
export const jointRowSchema = z.object({
  ...shared,
  atMm: z.number(),
  state: z.enum(JOINT_STATES),
  stepsDone: z.number().int(),
});
export const supportRowSchema = z.object({
  ...shared,
  atMm: z.number(),
  measuredMm: z.number().nullable().describe('As measured; null while not set, or set as planned.'),
  loadKg: z.number().describe('By simple spans, with all planned taps on.'),
  continuousLoadKg: z.number(),
  state: z.enum(SUPPORT_STATES),
});
export const tapRowSchema = z.object({
  ...shared,
  key: z.string().describe('The tap in the job document, "T1".'),
  atMm: z.number(),
  state: z.enum(TAP_STATES),
});

export type SectionView = z.infer<typeof sectionRowSchema>;
export type JointView = z.infer<typeof jointRowSchema>;
export type SupportView = z.infer<typeof supportRowSchema>;
export type TapView = z.infer<typeof tapRowSchema>;

interface OfRun {
  readonly key: string;
  readonly level: { readonly key: string };
}

export function sectionRow(row: PieceRow, run: OfRun): SectionView {
  const { mark, kind, hand, fromU80, toU80, state, lot } = row;
  const place = { fromMm: toMm(fromU80), toMm: toMm(toU80), lengthMm: toMm(toU80 - fromU80) };
  return sectionRowSchema.parse({ ...sharedOf(row, run), mark, kind, hand, ...place, state, lot });
}

export function jointRow(row: JointRow, run: OfRun): JointView {
  const { mark, atU80, state, stepsDone } = row;
  return jointRowSchema.parse({ ...sharedOf(row, run), mark, atMm: toMm(atU80), state, stepsDone });
}

export function supportRow(row: SupportRow, run: OfRun): SupportView {
  const { mark, atU80, measuredU80, loadKg, continuousLoadKg, state } = row;
  const measuredMm = measuredU80 === null ? null : toMm(measuredU80);
  const place = { atMm: toMm(atU80), measuredMm };
  return supportRowSchema.parse({ ...sharedOf(row, run), mark, ...place, loadKg, continuousLoadKg, state });
}

export function tapRow(row: TapRow, run: OfRun): TapView {
  const { key, atU80, state } = row;
  return tapRowSchema.parse({ ...sharedOf(row, run), mark: `${run.key} ${key}`, key, atMm: toMm(atU80), state });
}

interface SharedRow {
  readonly id: string;
  readonly version: number;
  readonly runId: string;
  readonly stateAt: Date | null;
  readonly retiredAt: Date | null;
}

function sharedOf({ id, version, runId, stateAt, retiredAt }: SharedRow, run: OfRun) {
  return {
    id,
    version,
    run: run.key,
    runId,
    level: run.level.key,
    stateAt: stateAt?.toISOString() ?? null,
    retired: retiredAt !== null,
  };
}
