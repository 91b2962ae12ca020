import { expect, it } from 'vitest';
import { similarityFrom } from '../../../src/domain/background/similarity.ts';
import { METRE } from '../../../src/domain/units/length.ts';
import { drawBackground } from '../../../src/paper/background/draw-background.ts';
import { drawingPdf, PICTURE } from '../../../src/paper/drawings/drawing-pdf.ts';
import type { PlanRun, Underlay } from '../../../views/drawings/floor-plan.tsx';
import { printPlan } from '../../../views/drawings/sheet/plan-sheets.tsx';
import { crossPng, inkOf } from '../../support/pictures.ts';
import { pdfStrokes, type Segment } from '../support/pdf-strokes.ts';

// A run of 20 m to the east with tap-offs at 2 m and 18 m, and a picture turned by the 3-4-5 triangle at 20 mm a pixel: its pixel
// (200, 400) shows the place 5 m north of the first tap-off. The place 4 m south of the second is then 16 m east and 9 m south of
// that; along the picture's right (0.8 east, 0.6 north) 16·0.8 − 9·0.6 = 7.4 m, 370 pixels, and along its down (0.6 east, 0.8
// south) 16·0.6 + 9·0.8 = 16.8 m, 840 pixels: pixel (570, 1240).
const A = { x: 200, y: 400 };
const B = { x: 570, y: 1240 };
const RUN: PlanRun = {
  id: 'R1',
  conductorSide: 'left',
  path: [
    { at: 0, x: 0, y: 0, z: 0 },
    { at: 20 * METRE, x: 20 * METRE, y: 0, z: 0 },
  ],
  taps: [2 * METRE, 18 * METRE],
};
const HEAD = {
  jobNumber: 'T-1',
  jobName: 'Invented hall',
  title: 'Plan of Level 2',
  under: '1 run',
  standing: { kind: 'level', released: 0, runs: 1 },
  date: '2026-05-12',
  units: 'metric',
  notes: [],
} as const;

it('on paper the picture lies where its two points say, measured in the file: 5 m north of one tap-off, 4 m south of the other', async () => {
  const drawn = await drawBackground(await crossPng(1000, 1500, [A, B]), 1);
  if (!drawn.ok) throw new Error(drawn.message);
  const placed = similarityFrom([
    { pixel: A, place: { x: 2 * METRE, y: 5 * METRE } },
    { pixel: B, place: { x: 18 * METRE, y: -4 * METRE } },
  ]);
  const underlay = { href: PICTURE, width: 1000, height: 1500, placed, strength: 1 };
  const pdf = await printed({ underlay }, drawn.paper);

  const [one, other] = tapTicks(pdfStrokes(pdf)[0] ?? []);
  const metre = ((other?.x ?? 0) - (one?.x ?? 0)) / 16;
  expect(metre).toBeCloseTo((10 / 25.4) * 72, 2); // at 1:100 a metre is 10 mm of paper

  const page = await drawBackground(pdf, 1);
  if (!page.ok) throw new Error(page.message);
  for (const [tick, north] of [
    [one, 5],
    [other, -4],
  ] as const) {
    const expected = dotsOf(tick, north * metre);
    const found = await middleOfInk(page.picture, expected, 60);
    expect(Math.hypot(found.x - expected.x, found.y - expected.y)).toBeLessThan(1.5); // dots of 0.17 mm: 17 mm of the building
  }
});

it('without the picture nothing stands there', async () => {
  const page = await drawBackground(await printed({}), 1);
  if (!page.ok) throw new Error(page.message);
  const [one] = tapTicks(pdfStrokes(await printed({}))[0] ?? []);
  const expected = dotsOf(one, (50 / 25.4) * 72);
  expect((await middleOfInk(page.picture, expected, 60)).ink).toBe(0);
});

async function printed(under: { readonly underlay?: Underlay }, picture?: Uint8Array): Promise<Buffer> {
  const plan = printPlan({ runs: [RUN], units: 'metric', head: HEAD, paper: 'a4', ratio: 100, ...under });
  if (!plan.ok) throw new Error(plan.why);
  const file = { head: HEAD, paper: 'a4', sheets: plan.sheets, ...(picture === undefined ? {} : { picture }) } as const;
  const parts: Uint8Array[] = [];
  for await (const part of drawingPdf(file)) parts.push(part);
  return Buffer.concat(parts);
}

/** A PDF counts points from the foot of its page (PDF 1.7, 8.3.2.3), A4 on its side 210 mm high; its raster counts dots from the top. */
function dotsOf(tick: { readonly x: number; readonly y: number } | undefined, up: number) {
  const height = (210 / 25.4) * 72;
  return { x: ((tick?.x ?? 0) * 150) / 72, y: ((height - (tick?.y ?? 0) - up) * 150) / 72 };
}

/** The short upright strokes at the tap-offs, in points: their x, and the y of the run's middle line. */
function tapTicks(strokes: readonly Segment[]) {
  const longest = [...strokes].filter(
    ([x1, y1, x2, y2]) => Math.abs(y1 - y2) < 0.01 && Math.abs(x2 - x1) > 560 && y1 < 400,
  );
  const edges = longest.map(([, y]) => y).filter((y) => Math.abs(y - (longest[0]?.[1] ?? 0)) < 12);
  const y = (Math.min(...edges) + Math.max(...edges)) / 2;
  return strokes
    .filter(
      ([x1, y1, x2, y2]) =>
        Math.abs(x1 - x2) < 0.01 && Math.abs(y2 - y1) > 2 && Math.abs(y2 - y1) < 5 && Math.abs(y1 - y) < 9,
    )
    .map(([x]) => ({ x, y }))
    .sort((a, b) => a.x - b.x);
}

/** The centre of gravity of what is inked within so many dots of a place. */
async function middleOfInk(picture: Uint8Array, { x, y }: { x: number; y: number }, within: number) {
  const { at } = await inkOf(picture);
  let [ink, sumX, sumY] = [0, 0, 0];
  for (let row = Math.round(y - within); row <= y + within; row++)
    for (let column = Math.round(x - within); column <= x + within; column++) {
      const dark = at(column, row) < 25 ? 0 : at(column, row); // what a JPEG leaves beside lines is no ink
      [ink, sumX, sumY] = [ink + dark, sumX + dark * (column + 0.5), sumY + dark * (row + 0.5)];
    }
  return { ink, x: sumX / ink, y: sumY / ink };
}
