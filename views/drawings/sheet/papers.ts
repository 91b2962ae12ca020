import { UNITS_PER_MM } from '../../../src/domain/units/length.ts';

/** The drawing unit of a sheet: a hundredth of an inch, 0.254 mm (the inch is 25.4 mm exactly). */
export const UNIT_MM = 0.254;

export const PAPER_NAMES = ['letter', 'a4'] as const;
export type PaperName = (typeof PAPER_NAMES)[number];

export interface Paper {
  readonly name: PaperName;
  readonly word: string;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Landscape. Letter is 11 × 8.5 in (ANSI/ASME Y14.1, size A); A4 is 297 × 210 mm (ISO 216). From memory. */
export const PAPERS: Readonly<Record<PaperName, Paper>> = {
  letter: { name: 'letter', word: 'letter, 11 × 8.5 in', widthMm: 279.4, heightMm: 215.9 },
  a4: { name: 'a4', word: 'A4, 297 × 210 mm', widthMm: 297, heightMm: 210 },
};

/**
 * Drawing units of a sheet for each unit of length at the scale 1:`ratio`.
 * `30 * FOOT * unitsPerLength(96) = 375`: thirty feet at 1/8" = 1'-0" are 3.75 in.
 */
export function unitsPerLength(ratio: number): number {
  return 1 / (UNIT_MM * UNITS_PER_MM * ratio);
}
