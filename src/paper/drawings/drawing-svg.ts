import { render } from 'preact-render-to-string';
import { PAPERS, UNIT_MM } from '../../../views/drawings/sheet/papers.ts';
import type { DrawingFile } from './drawing-pdf.ts';

/** A drawing as one SVG file at true size, in millimetres; several sheets stand one under another. */
export function drawingSvg({ paper, sheets }: DrawingFile): string {
  const [only] = sheets;
  if (only !== undefined && sheets.length === 1) return `${render(only)}\n`;
  const { widthMm, heightMm } = PAPERS[paper];
  const units = (mm: number) => Math.round((mm / UNIT_MM) * 10) / 10;
  const parts = sheets.map(
    (sheet, index) => `<g transform="translate(0 ${units(heightMm * index)})">${unsized(render(sheet))}</g>`,
  );
  const box = `0 0 ${units(widthMm)} ${units(heightMm * sheets.length)}`;
  const size = `width="${widthMm}mm" height="${heightMm * sheets.length}mm"`;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${box}" ${size}>${parts.join('')}</svg>\n`;
}

/** Inside another drawing a sheet is as large in its units as its view box says. */
function unsized(svg: string): string {
  return svg.replace(/viewBox="0 0 ([\d.]+) ([\d.]+)" width="[^"]*" height="[^"]*"/, 'width="$1" height="$2"');
}
