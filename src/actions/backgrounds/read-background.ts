import { toCalibration } from '../../document/background/read-calibration.ts';
import {
  type BackgroundView,
  backgroundViewSchema,
  type CalibrationDocument,
  calibrationSchema,
} from '../../document/background/schema.ts';
import { judgeCalibration, sheetScale } from '../../domain/background/judge-calibration.ts';
import { lengthPerPixel, similarityFrom, turnedDegrees } from '../../domain/background/similarity.ts';
import { UNITS_PER_MM } from '../../domain/units/length.ts';
import type { Reader, Tx } from '../../store/database.ts';
import { refuse } from '../refused.ts';

/** Without the pictures: they are large, and asked for by themselves. */
const TOLD = {
  levelId: true,
  version: true,
  name: true,
  kind: true,
  page: true,
  pages: true,
  width: true,
  height: true,
  sha256: true,
  dotsPerInch: true,
  byName: true,
  at: true,
  calibration: true,
} as const;

/** What is told of the picture under a level's plan; null where there is none. */
export async function readBackground(reader: Reader | Tx, levelId: string): Promise<BackgroundView | null> {
  const row = await reader.levelBackground.findUnique({ where: { levelId }, select: TOLD });
  if (row === null) return null;
  const { byName, width, height, calibration, at, ...same } = row;
  const [sizes] = await reader.$queryRaw<
    { bytes: number | bigint; source: number | bigint }[]
  >`SELECT length("picture") AS "bytes", CASE WHEN "source" IS NULL THEN 0 ELSE 1 END AS "source"
    FROM "LevelBackground" WHERE "levelId" = ${levelId}`;
  return backgroundViewSchema.parse({
    ...same,
    widthPx: width,
    heightPx: height,
    bytes: Number(sizes?.bytes ?? 0),
    otherPages: Number(sizes?.source ?? 0) === 1,
    by: byName,
    at: at.toISOString(),
    calibration:
      calibration === null
        ? null
        : calibrationView(calibrationSchema.parse(calibration), { width, height, dotsPerInch: row.dotsPerInch }),
  });
}

function calibrationView(
  calibration: CalibrationDocument,
  picture: { readonly width: number; readonly height: number; readonly dotsPerInch: number | null },
) {
  const points = toCalibration(calibration);
  const placed = similarityFrom(points);
  const perPixel = lengthPerPixel(placed);
  return {
    ...calibration,
    mmPerPixel: perPixel / UNITS_PER_MM,
    turnedDeg: turnedDegrees(placed),
    sheetScale: sheetScale(perPixel, picture),
    notes: judgeCalibration(points, picture),
  };
}

export async function assertLevel(reader: Reader | Tx, projectId: string, levelId: string): Promise<void> {
  const level = await reader.level.findFirst({ where: { id: levelId, projectId }, select: { id: true } });
  if (level === null) refuse({ code: 'not-found', what: 'level' });
}

export function refuseMissing(): never {
  return refuse({ code: 'not-found', what: 'background' });
}
