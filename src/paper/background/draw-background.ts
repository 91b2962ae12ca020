import type { PictureKind } from '../../domain/background/picture-kinds.ts';
import { type Answer, type DrawnPicture, inOwnProcess, inTurn } from './in-own-process.ts';
import { MOST_SECONDS } from './limits.ts';
import { lookAt } from './look-at.ts';
import { type NotDrawn, not, SAVE_ANEW } from './not-drawn.ts';

export interface DrawnBackground extends DrawnPicture {
  readonly kind: PictureKind;
}

/**
 * Draws what was sent as a picture of our own: a PNG or JPEG, or one page of a PDF at a fixed resolution. Looked at by its bytes,
 * measured before it is opened, and opened in a process of its own with bounded memory and time; one after the other.
 */
export async function drawBackground(
  bytes: Uint8Array,
  page: number,
  seconds = MOST_SECONDS,
): Promise<DrawnBackground | NotDrawn> {
  const looked = lookAt(bytes);
  if ('ok' in looked) return looked;
  return inTurn(async () => told(looked.kind, page, seconds, await inOwnProcess(looked.kind, bytes, page, seconds)));
}

function told(kind: PictureKind, page: number, seconds: number, answer: Answer): DrawnBackground | NotDrawn {
  if (answer.ok) return { ...answer, kind };
  const what = kind === 'pdf' ? 'PDF' : kind.toUpperCase();
  switch (answer.why) {
    case 'broken':
    case 'ended':
      return not(`The ${what} cannot be read: it is damaged or cut off.`, SAVE_ANEW);
    case 'locked':
      return not('The PDF asks for a password.', 'Save a copy without a password, or print the page to a new PDF.');
    case 'blank':
      return kind === 'pdf'
        ? not(`Page ${page} comes out blank.`, 'Choose another page, or print it to a new PDF.', 'page')
        : not('The picture comes out in one colour all over.', `Choose the file that shows the level. ${SAVE_ANEW}`);
    case 'slow':
      return not(
        `The ${what} takes longer than ${seconds} s to draw.`,
        'Print the one page to a new PDF, or save it as a picture.',
      );
    case 'no-page':
      return not(
        `The PDF has ${pagesWord(answer.pages)}, so there is no page ${page}.`,
        `Choose 1 to ${answer.pages}.`,
        'page',
      );
    case 'small-page':
      return not(
        `Page ${page} measures ${answer.inches.map((inches) => `${Number(inches.toPrecision(3))} in`).join(' by ')}, too small or too narrow to show a level.`,
        'Choose another page.',
        'page',
      );
  }
}

function pagesWord(pages: number): string {
  return pages === 1 ? 'one page' : `${pages} pages`;
}
