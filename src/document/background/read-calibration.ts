import type { PictureSize } from '../../domain/background/judge-calibration.ts';
import type { Calibration } from '../../domain/background/similarity.ts';
import { fromMm, toMm } from '../../domain/units/length.ts';
import { COORDINATE } from '../../domain/units/parse-length.ts';
import type { Fault } from '../fault.ts';
import type { CalibrationBody, CalibrationDocument } from './schema.ts';

const NAMES = ['A', 'B'] as const;
const MOST_MM = toMm(COORDINATE.max);

/** A calibration as it was given, with both places; or everything that is wrong with it at once. */
export function readCalibration(
  body: CalibrationBody,
  picture: Pick<PictureSize, 'width' | 'height'>,
): { readonly ok: true; readonly calibration: CalibrationDocument } | { readonly ok: false; readonly faults: Fault[] } {
  const faults = [...pixelFaults(body, picture), ...placeFaults(body)];
  if (faults.length > 0) return { ok: false, faults };
  const [first] = body.points;
  const { xMm, yMm, ...pixel } = body.points[1];
  const second = xMm !== undefined && yMm !== undefined ? { xMm, yMm } : atDistance(body, body.distanceMm ?? 0);
  return { ok: true, calibration: { points: [first, { ...pixel, ...second }] } };
}

/** The same in the lengths of the domain. */
export function toCalibration({ points: [first, second] }: CalibrationDocument): Calibration {
  return [toPoint(first), toPoint(second)];
}

function toPoint({ pixelX, pixelY, xMm, yMm }: CalibrationDocument['points'][0]): Calibration[0] {
  return { pixel: { x: pixelX, y: pixelY }, place: { x: fromMm(xMm), y: fromMm(yMm) } };
}

function pixelFaults({ points }: CalibrationBody, picture: Pick<PictureSize, 'width' | 'height'>): Fault[] {
  const faults = points.flatMap((point, index) =>
    (
      [
        ['pixelX', 'width', 'wide'],
        ['pixelY', 'height', 'high'],
      ] as const
    ).flatMap(([key, side, word]) =>
      point[key] >= 0 && point[key] <= picture[side]
        ? []
        : [
            {
              path: `points[${index}].${key}`,
              message: `Point ${NAMES[index]} is at pixel ${point[key]}, and the picture is ${picture[side]} pixels ${word}.`,
              remedy: `Give 0 to ${picture[side]}.`,
            },
          ],
    ),
  );
  const [a, b] = points;
  if (a.pixelX !== b.pixelX || a.pixelY !== b.pixelY) return faults;
  return [
    ...faults,
    {
      path: 'points[1].pixelX',
      message: `A and B are the same pixel, ${a.pixelX}, ${a.pixelY}.`,
      remedy: 'Choose two points far apart.',
    },
  ];
}

function placeFaults(body: CalibrationBody): Fault[] {
  const [a, b] = body.points;
  const faults = [
    ...farFaults(a.xMm, 'points[0].xMm'),
    ...farFaults(a.yMm, 'points[0].yMm'),
    ...farFaults(b.xMm, 'points[1].xMm'),
    ...farFaults(b.yMm, 'points[1].yMm'),
  ];
  const { distanceMm } = body;
  const hasPlace = b.xMm !== undefined && b.yMm !== undefined;
  if (hasPlace && distanceMm !== undefined)
    faults.push({
      path: 'distanceMm',
      message: 'Point B has a place and a distance, and they may not agree.',
      remedy: 'Leave one of them out.',
    });
  else if (!hasPlace && distanceMm === undefined)
    faults.push({
      path: b.xMm === undefined ? 'points[1].xMm' : 'points[1].yMm',
      message: 'Nothing says where point B is.',
      remedy: 'Give its place, east and north, or its distance from A.',
    });
  else if (distanceMm !== undefined && !(distanceMm >= 1 && distanceMm <= MOST_MM))
    faults.push({
      path: 'distanceMm',
      message: `The distance from A to B is ${distanceMm} mm.`,
      remedy: `Give the true distance in the building, over 1 mm and under ${MOST_MM / 1e6} km.`,
    });
  else if (hasPlace && Math.hypot(a.xMm - (b.xMm ?? 0), a.yMm - (b.yMm ?? 0)) < 1)
    faults.push({
      path: 'points[1].xMm',
      message: 'A and B are one and the same place in plan.',
      remedy: 'Give the places that the two pixels show.',
    });
  return faults;
}

function farFaults(valueMm: number | undefined, path: string): Fault[] {
  if (valueMm === undefined || Math.abs(valueMm) <= MOST_MM) return [];
  return [
    {
      path,
      message: `${valueMm} mm is farther than ${MOST_MM / 1e6} km from the origin.`,
      remedy: 'See whether the unit is right.',
    },
  ];
}

/** So far from the first point; the way there is given, or read off the picture when its top is north. */
function atDistance({ points: [a, b], headingDeg }: CalibrationBody, distanceMm: number) {
  const heading =
    headingDeg === undefined ? Math.atan2(a.pixelY - b.pixelY, b.pixelX - a.pixelX) : (headingDeg * Math.PI) / 180;
  return {
    xMm: exactMm(a.xMm + distanceMm * Math.cos(heading)),
    yMm: exactMm(a.yMm + distanceMm * Math.sin(heading)),
  };
}

function exactMm(mm: number): number {
  return toMm(fromMm(mm));
}
