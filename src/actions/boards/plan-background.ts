import { toCalibration } from '../../document/background/read-calibration.ts';
import { calibrationSchema } from '../../document/background/schema.ts';
import { type Similarity, similarityFrom } from '../../domain/background/similarity.ts';
import type { Reader } from '../../store/database.ts';

/** The picture under a plan, as the drawing takes it; `placed` is null until it is calibrated. */
export interface PlanBackground {
  readonly sha256: string;
  readonly width: number;
  readonly height: number;
  readonly placed: Similarity | null;
}

export async function planBackground(reader: Reader, levelId: string): Promise<PlanBackground | null> {
  const row = await reader.levelBackground.findUnique({
    where: { levelId },
    select: { sha256: true, width: true, height: true, calibration: true },
  });
  if (row === null) return null;
  const { calibration, ...picture } = row;
  const placed = calibration === null ? null : similarityFrom(toCalibration(calibrationSchema.parse(calibration)));
  return { ...picture, placed };
}

/** The paler copy for prints, JPEG. */
export async function paperBackground(reader: Reader, levelId: string): Promise<Uint8Array | null> {
  const row = await reader.levelBackground.findUnique({ where: { levelId }, select: { paper: true } });
  return row?.paper ?? null;
}
