import { createHash } from 'node:crypto';
import type { BackgroundView } from '../../document/background/schema.ts';
import { type DrawnBackground, drawBackground } from '../../paper/background/draw-background.ts';
import type { Tx } from '../../store/database.ts';
import { audit } from '../audit.ts';
import type { Context, Viewer } from '../context.ts';
import { refuse } from '../refused.ts';
import { readBackground, refuseMissing } from './read-background.ts';

const LONGEST_NAME = 120;
const MOST_PAGE = 10_000;

/** A picture drawn anew, or the refusal that says what to send instead. */
export async function drawn(bytes: Uint8Array, page: number): Promise<DrawnBackground> {
  const answer = await drawBackground(bytes, readPage(page));
  if (answer.ok) return answer;
  const { path, message, remedy } = answer;
  return refuse({ code: 'invalid', faults: [{ path, message, remedy }] });
}

function readPage(page: number): number {
  if (Number.isInteger(page) && page >= 1 && page <= MOST_PAGE) return page;
  return refuse({
    code: 'invalid',
    faults: [{ path: 'page', message: `"${page}" is no page of a PDF.`, remedy: 'Give a whole number from 1.' }],
  });
}

type Columns = ReturnType<typeof columnsOf> & {
  readonly name: string;
  readonly source: Uint8Array<ArrayBuffer> | null;
};

/** A version is the number of its audit entry, so that none ever comes again: not even when a picture goes and another comes. */
export async function writeBackground(
  tx: Tx,
  context: Context,
  viewer: Viewer,
  of: { projectId: string; levelId: string; before: BackgroundView | null; action: string },
  columns: Columns,
): Promise<BackgroundView> {
  const { projectId, levelId, before } = of;
  const { name, kind, page, pages, width, height, sha256 } = columns;
  const version = await audit(tx, context, viewer, {
    chain: projectId,
    action: of.action,
    subject: 'level',
    subjectId: levelId,
    ...(before === null ? {} : { before: toldOf(before) }),
    after: { name, kind, page, pages, widthPx: width, heightPx: height, sha256 },
  });
  await tx.levelBackground.deleteMany({ where: { levelId } });
  await tx.levelBackground.create({
    data: { levelId, ...columns, byUserId: viewer.userId, byName: viewer.name, at: context.clock(), version },
  });
  return (await readBackground(tx, levelId)) ?? refuseMissing();
}

export function columnsOf({ kind, page, pages, width, height, dotsPerInch, picture, paper }: DrawnBackground) {
  const sha256 = createHash('sha256').update(picture).digest('hex');
  return {
    kind,
    page,
    pages,
    width,
    height,
    dotsPerInch,
    picture: new Uint8Array(picture),
    paper: new Uint8Array(paper),
    sha256,
  };
}

/** The last part of a file's name, as far as it is good for reading. */
export function nameOf(sent: string): string {
  const last = sent.split(/[\\/]/).at(-1) ?? '';
  const plain = last
    .normalize('NFC')
    .replaceAll(/[\p{Cc}\p{Cf}\s]+/gu, ' ')
    .trim();
  return plain === '' ? 'without a name' : [...plain].slice(0, LONGEST_NAME).join(''); // by whole letters
}

/** What an audit entry says of it. */
export function toldOf({ name, kind, page, widthPx, heightPx, sha256, calibration }: BackgroundView) {
  return { name, kind, page, widthPx, heightPx, sha256, calibration: calibration?.points ?? null };
}
