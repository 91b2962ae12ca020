import type { Readiness } from '../../domain/closeout/readiness.ts';
import { type Book, type BookHead, newSheet, openBook } from '../pdf/book.ts';
import { contentsPages, drawContents, mark, startGroup } from '../pdf/contents.ts';
import { cautionsSheet } from './cautions-sheet.ts';
import type { RunDossier } from './dossier.ts';
import type { CloseoutJob } from './job.ts';
import { jointLog } from './joint-log.ts';
import { lettersSheet } from './letters-sheet.ts';
import { openItemsSheet } from './open-items-sheet.ts';
import { readinessSheet } from './readiness-sheet.ts';
import { revisionWord, runSheet } from './run-sheet.ts';
import { sayer } from './say.ts';
import { testSheet } from './test-sheet.ts';
import { when, zoneName } from './when.ts';

export interface BookInput {
  readonly job: CloseoutJob;
  readonly readiness: Readiness;
  /** Levels that have runs, and runs: known before any run is read, so that the contents' sheets can be counted. */
  readonly levels: number;
  readonly runs: number;
  /** Level by level. */
  readonly dossiers: AsyncIterable<RunDossier>;
}

const CAUTION = 'Record only. No permission to energise or to touch.';
/** Cautions, readiness, open items and letters. */
const FIXED_PARTS = 4;

/**
 * The closeout book, a PDF piece by piece: cautions, contents, readiness, each run with its strip, joints and tests, open
 * items, letters. Sheets leave as soon as they are drawn: what stays in memory is one run and a line of contents for each.
 */
export async function* closeoutBook(input: BookInput): AsyncGenerator<Uint8Array> {
  const { job, readiness } = input;
  const book = openBook(headOf(job));
  cautionsSheet(book, job);
  const contents = contentsPages(book, FIXED_PARTS + input.levels + input.runs);
  book.page += contents;
  readinessSheet(book, readiness);
  yield* drawn(book);
  yield* runSheets(book, input);
  openItemsSheet(book, readiness);
  yield* drawn(book);
  lettersSheet(book);
  drawContents(book, 1, contents);
  book.total.close(book.page);
  book.doc.end();
  yield* drawn(book);
}

async function* runSheets(book: Book, { job, dossiers }: BookInput): AsyncGenerator<Uint8Array> {
  const say = sayer(job.units, job.timeZone);
  let level: { readonly id: string | null; readonly under: PDFKit.PDFOutline } = { id: null, under: book.doc.outline };
  for await (const dossier of dossiers) {
    const head = { title: 'Run sheet', of: dossier.run.id, revision: revisionWord(dossier) };
    if (level.id === dossier.run.level) newSheet(book, head);
    else level = { id: dossier.run.level, under: startGroup(book, head, dossier.levelName) };
    const bookmark = mark(book, dossier.run.id, 'run', level.under);
    runSheet(book, dossier, say);
    jointLog(book, dossier, say, bookmark);
    testSheet(book, dossier, say, bookmark);
    yield* drawn(book);
  }
}

/** The bytes of all sheets that are done. */
function* drawn(book: Book): Generator<Uint8Array> {
  for (;;) {
    const bytes: unknown = book.doc.read();
    if (!(bytes instanceof Uint8Array)) return;
    yield bytes;
  }
}

function headOf(job: CloseoutJob): BookHead {
  return {
    title: `Closeout of job ${job.number}: ${job.name}`,
    subject: `Record of an overhead busway job as of ${job.asOf}, audit head ${job.audit.head}`,
    jobNumber: job.number,
    jobName: job.name,
    asOf: `${when(job.asOf, job.timeZone)} ${zoneName(job.timeZone)}`,
    asOfDate: new Date(job.asOf),
    units: job.units,
    caution: CAUTION,
  };
}
