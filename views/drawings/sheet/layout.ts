import type { UnitSystem } from '../../../src/domain/model.ts';
import { type Box, tenth } from '../scale.ts';
import { PAPERS, type PaperName, UNIT_MM } from './papers.ts';

/** Where things stand on a sheet, in its drawing units. */
export interface SheetLayout {
  readonly width: number;
  readonly height: number;
  readonly border: Box;
  /** Where the drawing itself goes. */
  readonly frame: Box;
  readonly legendY: number;
  readonly barY: number;
  readonly blockY: number;
}

/** 10 mm: what every printer can print to. */
const MARGIN = 40;
const INSET = 8;
export const BLOCK = 66;
const BAR = 26;
const LEGEND = 22;

export function sheetLayout(paper: PaperName): SheetLayout {
  const { widthMm, heightMm } = PAPERS[paper];
  const width = tenth(widthMm / UNIT_MM);
  const height = tenth(heightMm / UNIT_MM);
  const border = { x: MARGIN, y: MARGIN, width: tenth(width - 2 * MARGIN), height: tenth(height - 2 * MARGIN) };
  const blockY = tenth(height - MARGIN - BLOCK);
  const barY = blockY - BAR;
  const legendY = barY - LEGEND;
  const frame = {
    x: border.x + INSET,
    y: border.y + INSET,
    width: tenth(border.width - 2 * INSET),
    height: tenth(legendY - border.y - 2 * INSET),
  };
  return { width, height, border, frame, legendY, barY, blockY };
}

/** The bar that tells whether a print is true: 4 in, or 100 mm, in drawing units. */
export function checkBar(units: UnitSystem): { readonly length: number; readonly text: string } {
  return units === 'ft-in' ? { length: 400, text: '4 in' } : { length: 100 / UNIT_MM, text: '100 mm' };
}
