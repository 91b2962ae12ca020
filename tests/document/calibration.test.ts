import { describe, expect, it } from 'vitest';
import { readCalibrationForm, writeCalibrationForm } from '../../src/document/background/calibration-form.ts';
import { readCalibration } from '../../src/document/background/read-calibration.ts';
import type { CalibrationBody, CalibrationDocument } from '../../src/document/background/schema.ts';

const PICTURE = { width: 1200, height: 900 };
const A = { pixelX: 100, pixelY: 800, xMm: 1000, yMm: 2000 };

function placesOf(body: CalibrationBody) {
  const read = readCalibration(body, PICTURE);
  return read.ok ? read.calibration.points.map(({ xMm, yMm }) => [xMm, yMm]) : read.faults;
}

describe('a second point that is known by its distance', () => {
  const b = (pixelX: number, pixelY: number) => ({ pixelX, pixelY });

  it('lies as on the picture where its top is north: 300 right and 400 up of 500 pixels, 3-4-5', () => {
    expect(placesOf({ points: [A, b(400, 400)], distanceMm: 10_000 })).toEqual([
      [1000, 2000],
      [7000, 10_000], // 6 m east and 8 m north
    ]);
  });

  it('lies the way that is said, whatever the picture shows', () => {
    for (const [headingDeg, place] of [
      [0, [11_000, 2000]],
      [90, [1000, 12_000]],
      [180, [-9000, 2000]],
      [270, [1000, -8000]],
    ] as const)
      expect(placesOf({ points: [A, b(400, 400)], distanceMm: 10_000, headingDeg })).toEqual([[1000, 2000], place]);
  });
});

describe('a calibration that cannot be', () => {
  it.each<[string, CalibrationBody, string, string, string]>([
    [
      'a pixel beside the picture',
      {
        points: [
          { ...A, pixelX: 1201 },
          { ...A, pixelX: 5, xMm: 9000 },
        ],
      },
      'points[0].pixelX',
      'Point A is at pixel 1201, and the picture is 1200 pixels wide.',
      'Give 0 to 1200.',
    ],
    [
      'a pixel above it',
      { points: [A, { ...A, pixelY: -1, xMm: 9000 }] },
      'points[1].pixelY',
      'Point B is at pixel -1, and the picture is 900 pixels high.',
      'Give 0 to 900.',
    ],
    [
      'one pixel twice',
      { points: [A, { ...A, xMm: 9000 }] },
      'points[1].pixelX',
      'the same pixel, 100, 800',
      'far apart',
    ],
    [
      'one place twice',
      { points: [A, { ...A, pixelX: 5 }] },
      'points[1].xMm',
      'one and the same place',
      'two pixels show',
    ],
    [
      'a second point that nobody knows',
      { points: [A, { pixelX: 5, pixelY: 5 }] },
      'points[1].xMm',
      'Nothing says where point B is.',
      'or its distance from A',
    ],
    [
      'a second point known twice',
      { points: [A, { ...A, pixelX: 5, xMm: 9000 }], distanceMm: 500 },
      'distanceMm',
      'a place and a distance',
      'Leave one of them out.',
    ],
    ['no distance', { points: [A, { pixelX: 5, pixelY: 5 }], distanceMm: 0 }, 'distanceMm', 'is 0 mm', 'over 1 mm'],
    [
      'a place on another continent',
      { points: [A, { ...A, pixelX: 5, xMm: 3e10 }] },
      'points[1].xMm',
      '30000000000 mm is farther than 26 km',
      'whether the unit is right',
    ],
  ])('%s', (_name, body, path, message, remedy) => {
    const read = readCalibration(body, PICTURE);
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(read.faults).toHaveLength(1);
    expect(read.faults[0]).toMatchObject({ path });
    expect(read.faults[0]?.message).toContain(message);
    expect(read.faults[0]?.remedy).toContain(remedy);
  });
});

describe('the form of a calibration', () => {
  const project = { units: 'ft-in', currency: 'USD' } as const;
  const kept: CalibrationDocument = {
    points: [A, { pixelX: 1100, pixelY: 50.5, xMm: 12_496.8, yMm: -304.8 }],
  };

  it('sent back untouched says the same', () => {
    const read = readCalibrationForm(writeCalibrationForm(kept, 'ft-in'), project);
    expect(read).toEqual({ ok: true, body: kept });
    expect(writeCalibrationForm(kept, 'ft-in')['points[1].xMm']).toBe(`41'-0"`);
  });

  it('reads one of place and distance, as was chosen, though both are typed', () => {
    const typed = { ...writeCalibrationForm(kept, 'ft-in'), distanceMm: '40 ft', headingDeg: '90' };
    const byDistance = readCalibrationForm({ ...typed, known: 'distance' }, project);
    expect(byDistance).toEqual({
      ok: true,
      body: { points: [A, { pixelX: 1100, pixelY: 50.5 }], distanceMm: 12_192, headingDeg: 90 },
    });
  });

  it('tells every field that is missing or cannot be read', () => {
    const read = readCalibrationForm({ known: 'distance', 'points[0].pixelX': 'left', distanceMm: '-4 ft' }, project);
    expect(read.ok ? [] : read.faults.map(({ field }) => field)).toEqual([
      'points[0].pixelX',
      'points[0].pixelY',
      'points[0].xMm',
      'points[0].yMm',
      'points[1].pixelX',
      'points[1].pixelY',
      'distanceMm',
    ]);
    expect(read.ok ? '' : read.faults.map(({ said }) => said).join('\n')).toContain('"left" is not a number');
  });
});
