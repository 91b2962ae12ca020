import { crc32 } from 'node:zlib';

export interface Size {
  readonly width: number;
  readonly height: number;
}

/**
 * The size that a PNG states, after a walk over all its chunks (ISO/IEC 15948, 5.3: length, type, data, CRC, from IHDR to IEND);
 * null where it is cut off or damaged. Nothing is unpacked, so that a picture that would fill the memory is known by its head.
 */
export function pngSize(bytes: Uint8Array): Size | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let size: Size | null = null;
  for (let at = 8; at + 12 <= bytes.length; ) {
    const length = view.getUint32(at);
    const end = at + 12 + length;
    if (end > bytes.length) return null;
    if (crc32(bytes.subarray(at + 4, end - 4)) !== view.getUint32(end - 4)) return null;
    const type = Buffer.from(bytes.subarray(at + 4, at + 8)).toString('latin1');
    if (size === null && (type !== 'IHDR' || length !== 13)) return null;
    size ??= { width: view.getUint32(at + 8), height: view.getUint32(at + 12) };
    if (type === 'IEND') return size;
    at = end;
  }
  return null;
}

/** Markers that start a frame: SOF0 to SOF15 without DHT, JPG and DAC (ITU-T T.81, table B.1). */
const isFrame = (marker: number) => marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);

/** The size that a JPEG states in the header of its frame (ITU-T T.81, B.2.2); null where there is none or the picture does not end. */
export function jpegSize(bytes: Uint8Array): Size | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (Buffer.from(bytes).lastIndexOf(Buffer.from([0xff, 0xd9])) < 0) return null;
  for (let at = 2; at + 9 < bytes.length; ) {
    if (bytes[at] !== 0xff) return null;
    const marker = bytes[at + 1]!;
    if (marker === 0xff) at += 1;
    else if (isFrame(marker)) return { height: view.getUint16(at + 5), width: view.getUint16(at + 7) };
    else at += 2 + view.getUint16(at + 2);
  }
  return null;
}
