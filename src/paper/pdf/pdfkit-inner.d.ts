// What is needed beyond the published types. `contents.ts`: the page list, to lay the contents in front once the pages are
// known. `set-line.ts`: the font that is set. Pinned with pdfkit's exact version; tests/paper fails when it moves.
declare namespace PDFKit {
  interface PDFDocument {
    readonly _font: PDFFont;
    readonly _fontSize: number;
    readonly _root: { readonly data: { readonly Pages: { readonly data: { readonly Kids: PDFKitReference[] } } } };
  }
  interface PDFFont {
    readonly id: string;
    /** In thousandths of an em. */
    readonly ascender: number;
    readonly ref: () => PDFKitReference;
    /** Codes of the letters, and how far each brings the next. */
    readonly encode: (
      text: string,
    ) => readonly [readonly string[], readonly { readonly xAdvance: number; readonly advanceWidth: number }[]];
  }
}

declare module 'svg-to-pdfkit' {
  interface SvgOptions {
    readonly width?: number;
    readonly height?: number;
    readonly preserveAspectRatio?: string;
    readonly assumePt?: boolean;
    /** What stands for the address of a picture: an address that holds it. */
    readonly imageCallback?: (link: string) => string;
    readonly warningCallback?: (warning: string) => void;
  }
  function drawSvg(doc: PDFKit.PDFDocument, svg: string, x?: number, y?: number, options?: SvgOptions): void;
  export = drawSvg;
}
