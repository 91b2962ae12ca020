import type { UnitSystem } from '../../domain/model.ts';
import { writeLength } from '../../domain/units/format-length.ts';
import { fromMm } from '../../domain/units/length.ts';
import { COORDINATE, SIZE } from '../../domain/units/parse-length.ts';
import { type Entered, type EntryFault, type EntryOf, length, number } from '../form/entries.ts';
import { newLog, readEntry } from '../form/read-entry.ts';
import type { CalibrationBody, CalibrationDocument } from './schema.ts';

/** How point B is known. */
export const KNOWN_BY = ['place', 'distance'] as const;
/** The way from A to B where its distance is given: read off a picture whose top is north, or in degrees. */
export const WAYS = ['picture', '0', '90', '180', '270'] as const;

const FIRST = ['points[0].pixelX', 'points[0].pixelY', 'points[0].xMm', 'points[0].yMm'] as const;
const SECOND_PIXEL = ['points[1].pixelX', 'points[1].pixelY'] as const;
const SECOND_PLACE = ['points[1].xMm', 'points[1].yMm'] as const;
const COORDINATES = new Set<string>(['points[0].xMm', 'points[0].yMm', ...SECOND_PLACE]);

/** A calibration as typed: what could be read of it, and what is wrong beside each field. */
export function readCalibrationForm(
  entered: Entered,
  project: { readonly units: UnitSystem; readonly currency: string },
):
  | { readonly ok: true; readonly body: CalibrationBody }
  | { readonly ok: false; readonly faults: readonly EntryFault[] } {
  const log = newLog(project);
  const byDistance = entered.known === 'distance';
  const read = (field: string): number => {
    const value = readEntry(entryOf(field), field, entered, log);
    if (value === undefined && !log.faults.some((fault) => fault.field === field))
      log.faults.push({ field, said: missing(field) });
    return typeof value === 'number' ? value : 0;
  };
  const [pixelX, pixelY, xMm, yMm] = FIRST.map(read) as [number, number, number, number];
  const [secondX, secondY] = SECOND_PIXEL.map(read) as [number, number];
  const place = byDistance ? null : (SECOND_PLACE.map(read) as [number, number]);
  const distanceMm = byDistance ? read('distanceMm') : 0;
  if (log.faults.length > 0) return { ok: false, faults: log.faults };
  const way = entered.headingDeg ?? 'picture';
  return {
    ok: true,
    body: {
      points: [
        { pixelX, pixelY, xMm, yMm },
        { pixelX: secondX, pixelY: secondY, ...(place === null ? {} : { xMm: place[0], yMm: place[1] }) },
      ],
      ...(byDistance ? { distanceMm } : {}),
      ...(byDistance && way !== 'picture' ? { headingDeg: Number(way) || 0 } : {}),
    },
  };
}

/** The texts of the form; a kept calibration stands there by its two places. */
export function writeCalibrationForm(calibration: CalibrationDocument | null, units: UnitSystem): Entered {
  if (calibration === null) return { known: 'distance', headingDeg: 'picture' };
  const texts = calibration.points.flatMap((point, index) => [
    [`points[${index}].pixelX`, String(point.pixelX)],
    [`points[${index}].pixelY`, String(point.pixelY)],
    [`points[${index}].xMm`, writeLength(fromMm(point.xMm), units)],
    [`points[${index}].yMm`, writeLength(fromMm(point.yMm), units)],
  ]);
  return { known: 'place', headingDeg: 'picture', ...Object.fromEntries(texts) };
}

function entryOf(field: string): EntryOf {
  if (field === 'distanceMm') return length(field, SIZE);
  return COORDINATES.has(field) ? length(field, COORDINATE) : number(field);
}

function missing(field: string): string {
  if (field === 'distanceMm') return 'The distance from A to B is missing. Give it, or choose to give the place of B.';
  const point = field.startsWith('points[0]') ? 'A' : 'B';
  if (field.includes('pixel')) return `Point ${point} is not set. Press its place on the picture, or type its pixels.`;
  return `Where point ${point} is in plan is missing. Give it as a length; 0 at the origin.`;
}
