// Pictures and PDFs made for the tests: sheets with crosses at known places, and files of every bad kind. All invented.
import { crc32, deflateSync } from 'node:zlib';
import { createCanvas, loadImage } from '@napi-rs/canvas';
import PDFDocument from 'pdfkit';

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

/** A white PNG with black crosses, their arms 40 pixels long. */
export async function crossPng(width: number, height: number, crosses: readonly Cross[] = [{ x: 50, y: 50 }]) {
  return crossCanvas(width, height, crosses).encode('png');
}

export async function crossJpeg(width: number, height: number, crosses: readonly Cross[] = [{ x: 50, y: 50 }]) {
  return crossCanvas(width, height, crosses).encode('jpeg', 90);
}

function crossCanvas(width: number, height: number, crosses: readonly Cross[]) {
  const canvas = createCanvas(width, height);
  const pen = canvas.getContext('2d');
  pen.fillStyle = '#ffffff';
  pen.fillRect(0, 0, width, height);
  pen.strokeStyle = '#000000';
  pen.lineWidth = 3;
  for (const { x, y } of crosses) {
    pen.beginPath();
    pen.moveTo(x - 40, y);
    pen.lineTo(x + 40, y);
    pen.moveTo(x, y - 40);
    pen.lineTo(x, y + 40);
    pen.stroke();
  }
  return canvas;
}

/** A PNG of a few dozen bytes that states a size, sound in every checksum. */
export function statedPng(width: number, height: number): Buffer {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([1, 0, 0, 0, 0], 8);
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  return Buffer.concat([signature, chunk('IHDR', head), chunk('IDAT', deflateSync(Buffer.alloc(100))), chunk('IEND')]);
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

function chunk(type: string, data: Buffer = Buffer.alloc(0)): Buffer {
  const body = Buffer.concat([Buffer.from(type), data]);
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  sum.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, sum]);
}

/** How dark a picture is at its pixels: 0 white, 255 black. */
export async function inkOf(picture: Uint8Array): Promise<{
  readonly width: number;
  readonly height: number;
  readonly at: (x: number, y: number) => number;
}> {
  const image = await loadImage(Buffer.from(picture));
  const canvas = createCanvas(image.width, image.height);
  const pen = canvas.getContext('2d');
  pen.drawImage(image, 0, 0);
  const { data } = pen.getImageData(0, 0, image.width, image.height);
  const { width, height } = image;
  return { width, height, at: (x, y) => 255 - (data[4 * (Math.floor(y) * width + Math.floor(x))] ?? 255) };
}
