import type { PictureKind } from '../../domain/background/picture-kinds.ts';

const PNG = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
const JPEG = [0xff, 0xd8, 0xff];

/**
 * What a file is by its first bytes, whatever its name says: PNG (ISO/IEC 15948, 5.2), JPEG (ITU-T T.81, B.1.1.3: SOI and the
 * next marker), PDF (its header within the first 1024 bytes, as readers take it). Anything else with the words for what it looks like.
 */
export function sniff(
  bytes: Uint8Array,
): { readonly kind: PictureKind } | { readonly kind: null; readonly looks: string } {
  if (begins(bytes, PNG)) return { kind: 'png' };
  if (begins(bytes, JPEG)) return { kind: 'jpeg' };
  const head = Buffer.from(bytes.subarray(0, 1024)).toString('latin1');
  const isText = /^\s*(ï»¿)?\s*</.test(head);
  if (!isText && head.includes('%PDF-')) return { kind: 'pdf' };
  return { kind: null, looks: looksLike(head, isText) };
}

function looksLike(head: string, isText: boolean): string {
  if (isText)
    return /<svg[\s>]/i.test(head) ? 'an SVG drawing, which is a text that can hold scripts' : 'a text in HTML or XML';
  if (head.startsWith('GIF8')) return 'a GIF picture';
  if (/^RIFF....WEBP/s.test(head)) return 'a WebP picture';
  if (head.startsWith('BM')) return 'a BMP picture';
  if (head.startsWith('II*\0') || head.startsWith('MM\0*')) return 'a TIFF picture';
  if (head.startsWith('PK')) return 'a ZIP archive or an office document';
  if (/^AC10\d\d/.test(head)) return 'a DWG drawing';
  return 'something else';
}

function begins(bytes: Uint8Array, start: readonly number[]): boolean {
  return start.every((byte, index) => bytes[index] === byte);
}
