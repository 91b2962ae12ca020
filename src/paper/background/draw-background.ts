import { fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { PictureKind } from '../../domain/background/picture-kinds.ts';
import {
  LEAST_SIDE,
  LONGEST_KEPT,
  LONGEST_ON_PAPER,
  MOST_BYTES,
  MOST_KEPT_BYTES,
  MOST_MEGABYTES,
  MOST_PIXELS,
  MOST_SECONDS,
  MOST_SIDE,
  PAGE_DOTS_PER_INCH,
  PALE,
} from './limits.ts';
import { jpegSize, pngSize } from './picture-size.ts';
import { sniff } from './sniff.ts';

export interface DrawnBackground {
  readonly ok: true;
  readonly kind: PictureKind;
  readonly page: number;
  readonly pages: number;
  readonly width: number;
  readonly height: number;
  readonly dotsPerInch: number | null;
  /** PNG. */
  readonly picture: Uint8Array;
  /** JPEG of the same, paler and smaller. */
  readonly paper: Uint8Array;
}

export interface NotDrawn {
  readonly ok: false;
  /** The entry to mend. */
  readonly path: 'file' | 'page';
  readonly message: string;
  readonly remedy: string;
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

const GIVE = 'Give a PNG, a JPEG or a PDF.';
const SAVE_ANEW = 'Open it where you can read it, save it anew and send that.';

function lookAt(bytes: Uint8Array): { readonly kind: PictureKind } | NotDrawn {
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

function not(message: string, remedy: string, path: NotDrawn['path'] = 'file'): NotDrawn {
  return { ok: false, path, message, remedy };
}

type Answer =
  | Omit<DrawnBackground, 'kind'>
  | { readonly ok: false; readonly why: 'broken' | 'locked' | 'blank' | 'slow' }
  | { readonly ok: false; readonly why: 'no-page'; readonly pages: number }
  | { readonly ok: false; readonly why: 'small-page'; readonly inches: readonly [number, number] };

let last: Promise<unknown> = Promise.resolve();

/** One picture at a time: two large ones at once would take the memory of a small server. */
async function inTurn<T>(work: () => Promise<T>): Promise<T> {
  const turn = last.then(work);
  last = turn.catch(() => undefined);
  return turn;
}

function inOwnProcess(kind: PictureKind, bytes: Uint8Array, page: number, seconds: number): Promise<Answer> {
  const file = fileURLToPath(new URL('./draw-process.mjs', import.meta.url));
  const child = fork(file, {
    env: {},
    execArgv: ['--max-old-space-size=768'],
    serialization: 'advanced',
    stdio: ['ignore', 'ignore', 'ignore', 'ipc'],
  });
  return new Promise((resolve, reject) => {
    const clock = setTimeout(() => {
      resolve({ ok: false, why: 'slow' });
      child.kill('SIGKILL');
    }, seconds * 1000);
    child.once('message', (answer) => {
      resolve(answer as Answer); // from our own file beside this one
      child.disconnect();
    });
    child.once('error', reject);
    child.once('exit', () => {
      clearTimeout(clock);
      resolve({ ok: false, why: 'broken' }); // unless it has answered: a damaged picture may end its process
    });
    child.send({ kind, bytes, page, limits: LIMITS }, () => {}); // a process that is gone by now tells so by its end
  });
}

const LIMITS = {
  pageDotsPerInch: PAGE_DOTS_PER_INCH,
  longestKept: LONGEST_KEPT,
  longestOnPaper: LONGEST_ON_PAPER,
  leastSide: LEAST_SIDE,
  mostPixels: MOST_PIXELS,
  mostKeptBytes: MOST_KEPT_BYTES,
  pale: PALE,
};

function told(kind: PictureKind, page: number, seconds: number, answer: Answer): DrawnBackground | NotDrawn {
  if (answer.ok) return { ...answer, kind };
  const what = kind === 'pdf' ? 'PDF' : kind.toUpperCase();
  switch (answer.why) {
    case 'broken':
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
