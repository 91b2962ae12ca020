import drawSvg from 'svg-to-pdfkit';
import { type Book, makeRoom } from './book.ts';
import { say } from './lettering.ts';
import { printableSvg } from './printable-svg.ts';

/** An SVG drawing at the sheet's width, or smaller where it would be taller than a sheet. */
export function drawDrawing(book: Book, svg: string): void {
  const size = sizeOf(svg);
  const room = book.frame.bottom - book.frame.top;
  const scale = Math.min(book.frame.width / size.width, room / size.height);
  makeRoom(book, size.height * scale);
  const { frame, doc, y } = book;
  drawSvg(
    doc,
    printableSvg(svg, (text) => say(book, text)),
    frame.left,
    y,
    {
      width: size.width * scale,
      height: size.height * scale,
      assumePt: true,
      preserveAspectRatio: 'xMinYMin meet',
      warningCallback: (warning) => {
        throw new Error(`a drawing of the book cannot be put on paper: ${warning}`);
      },
    },
  );
  book.y += size.height * scale + 8;
}

function sizeOf(svg: string): { width: number; height: number } {
  const found = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg);
  if (found === null) throw new Error('a drawing of the book has no view box');
  return { width: Number(found[1]), height: Number(found[2]) };
}
