// Pictures and PDFs made for the tests: sheets with crosses at known places, and files of every bad kind. All invented.
import { crc32, deflateSync, inflateSync } from 'node:zlib';
import PDFDocument from 'pdfkit';
import { drawBackground } from '../../src/paper/background/draw-background.ts';

export interface Cross {
  /** In points of the sheet (72 to the inch) from its top left corner. */
  readonly x: number;
  readonly y: number;
}

/** A PDF with a page for each list of crosses, 36 × 24 in unless told. */
export async function crossPdf(
  pages: readonly (readonly Cross[])[],
  options: { readonly size?: [number, number]; readonly password?: string } = {},
): Promise<Buffer> {
  const doc = new PDFDocument({
    autoFirstPage: false,
    margin: 0,
    ...(options.password === undefined ? {} : { userPassword: options.password }),
    info: { Author: 'Secret Author', CreationDate: new Date(0) },
  });
  const parts: Buffer[] = [];
  doc.on('data', (part: Buffer) => parts.push(part));
  const ended = new Promise((resolve) => doc.on('end', resolve));
  for (const crosses of pages) {
    doc.addPage({ size: options.size ?? [2592, 1728] });
    for (const { x, y } of crosses) {
      doc
        .moveTo(x - 20, y)
        .lineTo(x + 20, y)
        .stroke();
      doc
        .moveTo(x, y - 20)
        .lineTo(x, y + 20)
        .stroke();
    }
  }
  doc.end();
  await ended;
  return Buffer.concat(parts);
}

/** A white PNG with black crosses, their arms 40 pixels long and 4 wide; written here, by no library. */
export async function crossPng(width: number, height: number, crosses: readonly Cross[] = [{ x: 50, y: 50 }]) {
  const rows = Buffer.alloc(height * (width + 1), 255);
  for (let y = 0; y < height; y++) rows[y * (width + 1)] = 0; // no filter
  const ink = (left: number, top: number, right: number, bottom: number) => {
    for (let y = Math.max(0, top); y < Math.min(height, bottom); y++)
      for (let x = Math.max(0, left); x < Math.min(width, right); x++) rows[y * (width + 1) + 1 + x] = 0;
  };
  for (const { x, y } of crosses) {
    ink(x - 40, y - 2, x + 40, y + 2);
    ink(x - 2, y - 40, x + 2, y + 40);
  }
  return Buffer.concat([
    SIGNATURE,
    chunk('IHDR', headerOf(width, height, [8, 0])),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND'),
  ]);
}

/** A JPEG that says to be shown turned by a right angle clockwise, as telephones write it (Exif 2.32, Orientation 6). */
export function onItsSide(jpeg: Buffer): Buffer {
  const directory = Buffer.from('4d4d002a00000008000101120003000000010006000000000000', 'hex');
  const body = Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), directory]);
  const head = Buffer.from([0xff, 0xe1, 0, body.length + 2]);
  return Buffer.concat([jpeg.subarray(0, 2), head, body, jpeg.subarray(2)]);
}

/** A PNG of a few dozen bytes that states a size, sound in every checksum. */
export function statedPng(width: number, height: number): Buffer {
  return Buffer.concat([
    SIGNATURE,
    chunk('IHDR', headerOf(width, height, [1, 0])),
    chunk('IDAT', deflateSync(Buffer.alloc(100))),
    chunk('IEND'),
  ]);
}

/** The same as a JPEG: only the header of its frame, and an end. */
export function statedJpeg(width: number, height: number): Buffer {
  const frame = Buffer.from([0xff, 0xd8, 0xff, 0xc0, 0, 11, 8, 0, 0, 0, 0, 1, 1, 0x11, 0, 0xff, 0xd9]);
  frame.writeUInt16BE(height, 7);
  frame.writeUInt16BE(width, 9);
  return frame;
}

/** A PNG with one more chunk of text before its end, as programs and people leave there. */
export function withText(png: Buffer, text: string): Buffer {
  return Buffer.concat([png.subarray(0, -12), chunk('tEXt', Buffer.from(`Comment\0${text}`)), png.subarray(-12)]);
}

/** All checksums right, and data that is no picture. */
export function nonsensePng(width: number, height: number): Buffer {
  const sound = statedPng(width, height);
  return Buffer.concat([sound.subarray(0, 33), chunk('IDAT', Buffer.alloc(500, 7)), chunk('IEND')]);
}

const SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);

/** Size, bits and colour type (ISO/IEC 15948, 11.2.2). */
function headerOf(width: number, height: number, [bits, colour]: readonly [number, number]): Buffer {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([bits, colour, 0, 0, 0], 8);
  return head;
}

function chunk(type: string, data: Buffer = Buffer.alloc(0)): Buffer {
  const body = Buffer.concat([Buffer.from(type), data]);
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  sum.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, sum]);
}

export interface Ink {
  readonly width: number;
  readonly height: number;
  readonly at: (x: number, y: number) => number;
}

/** How dark a picture is at its pixels: 0 white, 255 black. Read here, by no library; a JPEG is first drawn as a PNG. */
export async function inkOf(picture: Uint8Array): Promise<Ink> {
  if (picture[0] === 0x89) return inkOfPng(Buffer.from(picture));
  const drawn = await drawBackground(picture, 1);
  if (!drawn.ok) throw new Error(drawn.message);
  return inkOfPng(Buffer.from(drawn.picture));
}

function inkIn({ width, height }: { width: number; height: number }, wide: number, data: ArrayLike<number>): Ink {
  return { width, height, at: (x, y) => 255 - (data[wide * (Math.floor(y) * width + Math.floor(x))] ?? 255) };
}

/** Eight bits a sample, not interlaced: chunks, then lines taken out of their filters (ISO/IEC 15948, 9.2). */
function inkOfPng(png: Buffer): Ink {
  const size = { width: png.readUInt32BE(16), height: png.readUInt32BE(20) };
  const wide = { 0: 1, 2: 3, 6: 4 }[png[25] ?? -1];
  if (png[24] !== 8 || wide === undefined || png[28] !== 0) throw new Error('a PNG of another sort');
  const parts: Buffer[] = [];
  for (let at = 8; at < png.length; at += 12 + png.readUInt32BE(at))
    if (png.toString('latin1', at + 4, at + 8) === 'IDAT')
      parts.push(png.subarray(at + 8, at + 8 + png.readUInt32BE(at)));
  const packed = inflateSync(Buffer.concat(parts));
  const line = size.width * wide;
  const data = Buffer.alloc(line * size.height);
  for (let y = 0; y < size.height; y++) {
    const filter = packed[y * (line + 1)];
    for (let x = 0; x < line; x++) {
      const to = y * line + x;
      const left = x < wide ? 0 : (data[to - wide] ?? 0);
      const up = y === 0 ? 0 : (data[to - line] ?? 0);
      const slant = x < wide || y === 0 ? 0 : (data[to - line - wide] ?? 0);
      const guess = [0, left, up, (left + up) >> 1, paeth(left, up, slant)][filter ?? 0] ?? 0;
      data[to] = (packed[y * (line + 1) + 1 + x] ?? 0) + guess;
    }
  }
  return inkIn(size, wide, data);
}

function paeth(left: number, up: number, slant: number): number {
  const [p, q, r] = [Math.abs(up - slant), Math.abs(left - slant), Math.abs(left + up - 2 * slant)];
  if (p <= q && p <= r) return left;
  return q <= r ? up : slant;
}
