import { fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { PictureKind } from '../../domain/background/picture-kinds.ts';
import {
  LEAST_SIDE,
  LONGEST_KEPT,
  LONGEST_ON_PAPER,
  MOST_KEPT_BYTES,
  MOST_PIXELS,
  PAGE_DOTS_PER_INCH,
  PALE,
} from './limits.ts';

export interface DrawnPicture {
  readonly ok: true;
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

export type Answer =
  | DrawnPicture
  | { readonly ok: false; readonly why: 'broken' | 'ended' | 'locked' | 'blank' | 'slow' }
  | { readonly ok: false; readonly why: 'no-page'; readonly pages: number }
  | { readonly ok: false; readonly why: 'small-page'; readonly inches: readonly [number, number] };

let last: Promise<unknown> = Promise.resolve();

/** One picture at a time: two large ones at once would take the memory of a small server. */
export async function inTurn<T>(work: () => Promise<T>): Promise<T> {
  const turn = last.then(work);
  last = turn.catch(() => undefined);
  return turn;
}

/** What `draw-process.mjs` answers, within so many seconds. A process that ended without an answer is given a second chance. */
export async function inOwnProcess(
  kind: PictureKind,
  bytes: Uint8Array,
  page: number,
  seconds: number,
): Promise<Answer> {
  const first = await once(kind, bytes, page, seconds);
  return !first.ok && first.why === 'ended' ? once(kind, bytes, page, seconds) : first;
}

function once(kind: PictureKind, bytes: Uint8Array, page: number, seconds: number): Promise<Answer> {
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
    child.on('error', reject); // every one of them is heard: an unheard one would end the server
    child.once('exit', () => {
      clearTimeout(clock);
      resolve({ ok: false, why: 'ended' }); // unless it has answered: a damaged picture may end its process
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
