import type { Book } from '../pdf/book.ts';
import { startPart } from '../pdf/contents.ts';
import { drawDrawing } from '../pdf/drawing.ts';
import { drawFacts, type Fact } from '../pdf/facts.ts';
import { BOLD } from '../pdf/lettering.ts';
import { heading, list, paragraph, sheetTitle } from '../pdf/prose.ts';
import { inkLegend } from './ink-legend.tsx';
import type { CloseoutJob } from './job.ts';
import { orNone } from './say.ts';
import { when, zoneName } from './when.ts';

const CAUTIONS = [
  'This book records what was drawn, done and measured. It is not a permission: nothing in it says that any part may be energised, or may be touched.',
  'Take every conductor as live until a qualified person has proved absence of voltage at the place of work, with a tester proved before and after.',
  "Work on the busway and its tap-offs isolated, locked out and proved. The local code, the authority having jurisdiction and the maker's instructions stand before this book wherever they ask for more or for something else.",
  'Figures computed here – layout, loads on hangers, limits of tests – are for planning and record. They are not a sealed design.',
  'A test speaks for the day and the conditions written beside it. Work done later, anywhere in what is electrically connected, makes it stale.',
];

const READING = [
  'Distances run along the centre line from the face of the first piece at the feed. A figure behind ~ was rounded to be shown. A dash is what nobody wrote down: never nought, and never a pass.',
  'Readings stand as they were written, with their sign: > 5000 is a bound, 0.00 a figure, and a blank neither.',
  'This book is set in a type of the western European set. Letters with other marks are printed without the mark, and other signs as their code point, such as [U+5C71]; the last sheet lists them. The registers and the job document beside this book hold the exact spelling.',
];

/** The first sheet: what this book is, the cautions before anything else, and how its drawings are read. */
export function cautionsSheet(book: Book, job: CloseoutJob): void {
  startPart(book, { title: 'Cautions', of: 'whole job', revision: NO_REVISION }, { title: 'Cautions', rank: 'part' });
  sheetTitle(book, `Closeout of job ${job.number}`, 'Busway Job Book');
  paragraph(book, job.name, { face: BOLD, size: 11, width: book.frame.width });
  drawFacts(book, jobFacts(job), 4);
  heading(book, 'Cautions', 120);
  list(book, CAUTIONS, { mark: (index) => `${index + 1}.` });
  heading(book, 'How to read it', 60);
  list(book, READING);
  drawDrawing(book, inkLegend(book.frame.width));
}

export const NO_REVISION = '–';

function jobFacts(job: CloseoutJob): Fact[] {
  return [
    ['Client', orNone(job.client)],
    ['Site', orNone(job.site)],
    ['Nominal voltage', `${job.voltageLL} / ${job.voltageLN} V, ${job.frequencyHz} Hz`],
    ['Code basis', [job.codeBasis, job.codeEdition].filter(Boolean).join(' ')],
    ['As of', `${when(job.asOf, job.timeZone)} (${zoneName(job.timeZone)})`],
    ['Times are in', zoneName(job.timeZone)],
    ['Design version', String(job.designVersion)],
    ['Audit trail', `${job.audit.entries} entries, the newest ${job.audit.head.slice(0, 16)}…`],
  ];
}
