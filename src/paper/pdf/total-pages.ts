/** The number of pages of a book that is not drawn yet: each sheet shows it now, and it is written when the last is done. */
export interface TotalPages {
  readonly draw: (x: number, y: number) => void;
  readonly close: (pages: number) => void;
}

const SIZE = 6.2;
/** Of Helvetica, in thousandths of an em: from a line's upper edge to its base, as the rest of the book's text is set. */
const ASCENT = 0.718;

/**
 * A form (PDF 1.7, 8.10) that every sheet refers to and that holds the number as text: no sheet has to be kept, and no
 * second run over the job is needed, to print "page n of m".
 */
export function totalPages(doc: PDFKit.PDFDocument): TotalPages {
  const font = doc.ref({ Type: 'Font', Subtype: 'Type1', BaseFont: 'Helvetica', Encoding: 'WinAnsiEncoding' });
  const form = doc.ref({
    Type: 'XObject',
    Subtype: 'Form',
    BBox: [0, -2, 60, 8],
    Resources: { Font: { F0: font } },
  });
  return {
    draw: (x, y) => {
      doc.page.xobjects.Total = form;
      const base = y + ASCENT * SIZE + 0.6;
      doc.save();
      doc.transform(1, 0, 0, -1, x, base);
      doc.addContent('/Total Do');
      doc.restore();
    },
    close: (pages) => {
      font.end(undefined);
      form.end(`BT /F0 ${SIZE} Tf 0 0 Td (${pages}) Tj ET`);
    },
  };
}
