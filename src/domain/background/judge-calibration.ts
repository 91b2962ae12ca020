import { toMm, UNITS_PER_MM } from '../units/length.ts';
import { type Calibration, lengthPerPixel, similarityFrom } from './similarity.ts';

export interface PictureSize {
  readonly width: number;
  readonly height: number;
  /** At which the page of a PDF was drawn; null where the picture says nothing of paper. */
  readonly dotsPerInch: number | null;
}

/** Points nearer than this part of the diagonal make small errors large. */
const NEAR = 0.2;
/** A pixel of a building's plan shows something between a pencil line and half a metre. */
const LEAST_MM = 0.2;
const MOST_MM = 500;
/** A sheet plotted at its scale comes out within this of it. */
const OFF_SCALE = 0.015;
/** Scales that plans of buildings are drawn at: the metric ones of ISO 5455 and their halves, then inches to the foot, then feet to the inch. From memory. */
const USUAL = [20, 25, 50, 100, 200, 250, 500, 1000, 24, 32, 48, 64, 96, 128, 192, 120, 240, 360, 480, 600];

/** The scale 1:n of the paper that the picture was drawn from; null where no paper is known. Length per pixel in, 25.4 mm to the inch. */
export function sheetScale(perPixel: number, { dotsPerInch }: Pick<PictureSize, 'dotsPerInch'>): number | null {
  return dotsPerInch === null ? null : ((perPixel / UNITS_PER_MM) * dotsPerInch) / 25.4;
}

/**
 * What is odd about a calibration, each as one sentence with its number and what to do; none is a reason to refuse it.
 * Points nearer than a fifth of the diagonal, a pixel under 0.2 mm or over 500 mm, a sheet more than 1.5 % off every usual scale.
 */
export function judgeCalibration(calibration: Calibration, picture: PictureSize): string[] {
  const perPixel = lengthPerPixel(similarityFrom(calibration));
  return [nearPoints(calibration, picture, perPixel), oddPixel(perPixel), oddSheet(perPixel, picture)].filter(
    (note) => note !== null,
  );
}

function nearPoints([first, second]: Calibration, { width, height }: PictureSize, perPixel: number): string | null {
  const apart = Math.hypot(second.pixel.x - first.pixel.x, second.pixel.y - first.pixel.y);
  const diagonal = Math.hypot(width, height);
  if (apart >= NEAR * diagonal) return null;
  const moved = toMm(Math.round((diagonal / apart) * perPixel));
  return (
    `The points are ${Math.round(apart)} pixels apart, ${percent(apart / diagonal)} of the picture’s diagonal: one pixel off ` +
    `at a point may move a far corner by ${Math.round(moved)} mm. Choose points farther apart.`
  );
}

function oddPixel(perPixel: number): string | null {
  const mm = perPixel / UNITS_PER_MM;
  if (mm >= LEAST_MM && mm <= MOST_MM) return null;
  return `One pixel shows ${Number(mm.toPrecision(3))} mm, which no plan of a building does. See that both places are in the right unit.`;
}

function oddSheet(perPixel: number, picture: PictureSize): string | null {
  const scale = sheetScale(perPixel, picture);
  if (scale === null) return null;
  const off = (usual: number) => Math.abs(scale / usual - 1);
  const nearest = USUAL.reduce((best, usual) => (off(usual) < off(best) ? usual : best));
  if (off(nearest) <= OFF_SCALE) return null;
  return (
    `The sheet comes out at 1:${Number(scale.toPrecision(4))}, ${percent(off(nearest))} off the nearest usual scale, 1:${nearest}: ` +
    'a point may be off, or the sheet was not plotted at its scale. Check a third distance that you know.'
  );
}

function percent(part: number): string {
  return `${Number((part * 100).toPrecision(2))} %`;
}
