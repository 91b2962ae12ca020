import fc from 'fast-check';
import PDFDocument from 'pdfkit';
import { expect, it } from 'vitest';
import { setLine } from '../../src/paper/pdf/set-line.ts';

type Draw = (doc: PDFKit.PDFDocument, text: string, x: number, y: number) => void;
interface Line {
  readonly text: string;
  readonly face: string;
  readonly size: number;
  readonly x: number;
  readonly y: number;
}

function bookOf(lines: readonly Line[], draw: Draw): Buffer {
  const doc = new PDFDocument({ size: [792, 612], margin: 0, info: { CreationDate: new Date(0) } });
  for (const { text, face, size, x, y } of lines) draw(doc.font(face).fontSize(size), text, x, y);
  doc.end();
  const parts: Buffer[] = [];
  for (let part = doc.read(); part !== null; part = doc.read()) parts.push(part as Buffer);
  return Buffer.concat(parts);
}

it('writes every line as the library writes it, to the byte: pairs set closer, accents, signs, blanks', () => {
  const letter = fc.constantFrom(...'AVTo.,Yew PfLy1-/"’“”–—•…€™Žé°µ×ÿ  F1-R05-A: P01; 11\'-6 1/16"');
  const line = fc.record({
    text: fc.string({ unit: letter, minLength: 1, maxLength: 60 }),
    face: fc.constantFrom('Helvetica', 'Helvetica-Bold'),
    size: fc.constantFrom(6.2, 7.5, 9.5, 14),
    x: fc.double({ min: 0, max: 700, noNaN: true }),
    y: fc.double({ min: 0, max: 600, noNaN: true }),
  });
  fc.assert(
    fc.property(fc.array(line, { minLength: 1, maxLength: 8 }), (lines) => {
      const library = bookOf(lines, (doc, text, x, y) => doc.text(text, x, y, { lineBreak: false }));
      expect(bookOf(lines, setLine).equals(library)).toBe(true);
    }),
    { numRuns: 300 },
  );
});
