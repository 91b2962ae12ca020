// What `contents.ts` needs beyond the published types: the page list, to lay the contents in front once the pages are known.
// Pinned with pdfkit's exact version; tests/paper/book.test.ts fails when it moves.
declare namespace PDFKit {
  interface PDFDocument {
    readonly _root: { readonly data: { readonly Pages: { readonly data: { readonly Kids: PDFKitReference[] } } } };
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
