import { render } from 'preact-render-to-string';
import { PAPERS, UNIT_MM } from '../../../views/drawings/sheet/papers.ts';
import { type DrawingFile, jpegData, PICTURE } from './drawing-pdf.ts';

/** A drawing as one SVG file at true size, in millimetres; several sheets stand one under another. */
export function drawingSvg(file: DrawingFile): string {
  const svg = sheetsSvg(file);
  return file.picture === undefined ? svg : withPicture(svg, file.picture);
}

/** The picture stands in the file once; sheets use it from there. */
function withPicture(svg: string, picture: Uint8Array): string {
  const [shown = ''] = new RegExp(`<image href="${PICTURE}"[^>]*>`).exec(svg) ?? [];
  if (shown === '') return svg;
  const own = shown.replace(/ (transform|class|opacity)="[^"]*"/g, '').replace(PICTURE, jpegData(picture));
  const kept = own.replace('<image ', `<image id="${PICTURE}" `).replace(/\/?>$/, '/>');
  const used = svg.replaceAll(`<image href="${PICTURE}"`, `<use href="#${PICTURE}"`).replaceAll('</image>', '</use>');
  return used.replace(/^<svg[^>]*>/, (root) => `${root}<defs>${kept}</defs>`);
}

function sheetsSvg({ paper, sheets }: DrawingFile): string {
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
