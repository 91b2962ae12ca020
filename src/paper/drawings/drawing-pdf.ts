import { setImmediate as nextTurn } from 'node:timers/promises';
import PDFDocument from 'pdfkit';
import type { JSX } from 'preact';
import { render } from 'preact-render-to-string';
import drawSvg from 'svg-to-pdfkit';
import type { SheetHead } from '../../../views/drawings/sheet/head.ts';
import { PAPERS, type PaperName } from '../../../views/drawings/sheet/papers.ts';
import { printable } from '../pdf/printable.ts';
import { printableSvg } from '../pdf/printable-svg.ts';

/** Points of a PDF to a millimetre: 72 to the inch (PDF 1.7, 8.3.2.3) of 25.4 mm. */
const POINTS_PER_MM = 72 / 25.4;

export interface DrawingFile {
  readonly head: SheetHead;
  readonly paper: PaperName;
  readonly sheets: readonly JSX.Element[];
  /** JPEG, where the sheets name `PICTURE`: it is in the file once, however many of them show it. */
  readonly picture?: Uint8Array;
}

/** What a sheet calls the picture that it shows. */
export const PICTURE = 'picture-under-plan';

/**
 * A drawing as PDF, a page a sheet at true size, sheet after sheet so that a roll of them holds nobody up. The same drawing of
 * the same date gives the same bytes.
 */
export async function* drawingPdf({ head, paper, sheets, picture }: DrawingFile): AsyncGenerator<Uint8Array> {
  const { widthMm, heightMm } = PAPERS[paper];
  const size: [number, number] = [widthMm * POINTS_PER_MM, heightMm * POINTS_PER_MM];
  const dated = new Date(`${head.date}T00:00:00Z`);
  const title = `${head.title}, job ${head.jobNumber}`;
  const doc = new PDFDocument({
    autoFirstPage: false,
    size,
    margin: 0,
    pdfVersion: '1.7',
    lang: 'en',
    displayTitle: true,
    info: {
      Title: title,
      Author: 'Busway Job Book',
      Creator: 'Busway Job Book',
      Producer: 'Busway Job Book',
      CreationDate: dated,
      ModDate: dated,
    },
  });
  const pictureData = picture === undefined ? '' : jpegData(picture);
  for (const sheet of sheets) {
    doc.addPage();
    drawSvg(doc, printableSvg(render(sheet), printable), 0, 0, {
      width: size[0],
      height: size[1],
      assumePt: true,
      preserveAspectRatio: 'xMinYMin meet',
      imageCallback: (link) => (link === PICTURE ? pictureData : link),
      warningCallback: (warning) => {
        throw new Error(`a drawing cannot be put on paper: ${warning}`);
      },
    });
    yield* drawnOf(doc);
    await nextTurn();
  }
  doc.end();
  yield* drawnOf(doc);
}

/** A JPEG as an address that holds it (RFC 2397). */
export function jpegData(jpeg: Uint8Array): string {
  return `data:image/jpeg;base64,${Buffer.from(jpeg).toString('base64')}`;
}

/** The bytes of all that is drawn. */
function* drawnOf(doc: PDFKit.PDFDocument): Generator<Uint8Array> {
  for (;;) {
    const bytes: unknown = doc.read();
    if (!(bytes instanceof Uint8Array)) return;
    yield bytes;
  }
}
