const ENTRY = 0x02014b50;
const ENTRY_BYTES = 46;
const UNPACKED_AT = 24;

/**
 * How many bytes the entries of a zip archive say that they unpack to; null where the archive lists none. Asked before it is
 * opened, so that a small file that would fill the memory is refused unread.
 *
 * Source: the central directory of the ZIP format (APPNOTE 4.3.12).
 */
export function declaredBytes(bytes: Uint8Array): number | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let sum: number | null = null;
  for (let at = 0; at + ENTRY_BYTES <= bytes.length; at++) {
    if (bytes[at] !== 0x50 || view.getUint32(at, true) !== ENTRY) continue;
    sum = (sum ?? 0) + view.getUint32(at + UNPACKED_AT, true);
  }
  return sum;
}
