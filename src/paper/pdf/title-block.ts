import type { Book } from './book.ts';
import { cutLine } from './break-lines.ts';
import { BOLD, measure, PLAIN, put, rule, say } from './lettering.ts';

export const BLOCK_HEIGHT = 34;

/** The sheet's border with the title block at its foot: job, sheet, run, revision, as-of time, page. */
export function drawTitleBlock(book: Book): void {
  const { doc, frame, head, sheet } = book;
  const { x, y, width, height } = frame.border;
  doc.lineWidth(0.9).strokeColor('black').rect(x, y, width, height).stroke();
  const top = y + height - BLOCK_HEIGHT;
  rule(book, top, { weight: 0.9, from: x, width });
  const cells = [
    { label: 'Job', lines: [head.jobNumber, head.jobName], share: 0.3 },
    { label: 'Sheet', lines: [sheet.title, head.caution], share: 0.3 },
    { label: 'Run', lines: [sheet.of], share: 0.13 },
    { label: 'Revision', lines: [sheet.revision], share: 0.08 },
    { label: 'As of', lines: head.asOf.split(/ (?=\S+$)/), share: 0.11 },
  ];
  let left = x;
  for (const cell of cells) {
    drawCell(book, cell.label, cell.lines, left, top, cell.share * width);
    left += cell.share * width;
    doc
      .lineWidth(0.4)
      .moveTo(left, top)
      .lineTo(left, y + height)
      .stroke();
  }
  drawPageNumber(book, left, top);
}

function drawCell(book: Book, label: string, lines: readonly string[], x: number, y: number, width: number): void {
  put(book, label.toUpperCase(), x + 5, y + 4, { size: 5 });
  for (const [index, line] of lines.entries()) {
    const face = index === 0 ? BOLD : PLAIN;
    const size = index === 0 ? 8.5 : 6.2;
    const fitted = cutLine(say(book, line), width - 10, measure(book, face, size));
    put(book, fitted, x + 5, y + 11.5 + index * 10.5, { face, size });
  }
}

function drawPageNumber(book: Book, x: number, y: number): void {
  put(book, 'PAGE', x + 5, y + 4, { size: 5 });
  const number = String(book.page);
  put(book, number, x + 5, y + 11.5, { face: BOLD, size: 8.5 });
  put(book, 'of', x + 5, y + 22, { size: 6.2 });
  book.total.draw(x + 14, y + 21.4);
}
