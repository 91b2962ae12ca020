import type { PictureKind } from '../../domain/background/picture-kinds.ts';
import { LEAST_SIDE, MOST_BYTES, MOST_MEGABYTES, MOST_PIXELS, MOST_SIDE } from './limits.ts';
import { GIVE, type NotDrawn, not, SAVE_ANEW } from './not-drawn.ts';
import { jpegSize, pngSize } from './picture-size.ts';
import { sniff } from './sniff.ts';

/** What a file is and whether it can be opened at all, told from its bytes before anything opens it. */
export function lookAt(bytes: Uint8Array): { readonly kind: PictureKind } | NotDrawn {
  if (bytes.length === 0) return not('The file is empty: it has 0 bytes.', `Choose the file again. ${GIVE}`);
  if (bytes.length > MOST_BYTES)
    return not(
      `The file is larger than ${MOST_MEGABYTES} MB.`,
      'Send the one page that shows this level, or a picture at 150 dots to the inch.',
    );
  const seen = sniff(bytes);
  if (seen.kind === null) return not(`By its bytes the file is ${seen.looks}, whatever its name says.`, GIVE);
  if (seen.kind === 'pdf') return seen;
  const size = seen.kind === 'png' ? pngSize(bytes) : jpegSize(bytes);
  if (size === null) return not(`The ${seen.kind.toUpperCase()} is damaged or cut off.`, SAVE_ANEW);
  const { width, height } = size;
  if (width * height > MOST_PIXELS || Math.max(width, height) > MOST_SIDE)
    return not(
      `The picture has ${width} × ${height} pixels; up to ${MOST_PIXELS / 1e6} million are taken, and ${MOST_SIDE} on a side.`,
      'Save it smaller, as at 150 dots to the inch.',
    );
  if (Math.min(width, height) < LEAST_SIDE)
    return not(
      `The picture has ${width} × ${height} pixels, too few to show a level.`,
      `Give one with at least ${LEAST_SIDE} on each side.`,
    );
  return seen;
}
