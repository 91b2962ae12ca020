import { feedWords } from '../../../views/drawings/strip/words.ts';
import type { Book } from '../pdf/book.ts';
import { drawDrawing } from '../pdf/drawing.ts';
import { drawFacts, type Fact } from '../pdf/facts.ts';
import { sheetTitle } from '../pdf/prose.ts';
import { drawBeside, drawTable } from '../pdf/table.ts';
import type { RunDossier } from './dossier.ts';
import { hangerTable, jointTable, pieceTable } from './run-tables.ts';
import { NONE, orNone, type Say } from './say.ts';
import { stripLines } from './strip-of.ts';
import { placeTable, tapTable, wholeRunTable } from './tap-and-run-tables.ts';

/** The run as built, on the sheet just begun: what it is, its strip, and what hangs along it with planned and measured places. */
export function runSheet(book: Book, dossier: RunDossier, say: Say): void {
  const { run, revision } = dossier;
  sheetTitle(book, `Run ${run.id}`, revision === 0 ? 'not released: all of it is planned' : '');
  drawFacts(book, runFacts(dossier, say), 6);
  for (const line of stripLines(dossier, book.head.units)) drawDrawing(book, line);
  drawBeside(book, pieceTable(dossier, say), jointTable(dossier, say), 0.57);
  drawBeside(book, hangerTable(dossier, say), wholeRunTable(dossier, say), 0.65);
  drawTable(book, tapTable(dossier, say));
  if (run.crossings.length + run.noJoint.length + run.noSupport.length > 0) drawTable(book, placeTable(dossier, say));
}

export function revisionWord({ revision, changed }: Pick<RunDossier, 'revision' | 'changed'>): string {
  if (revision === 0) return 'draft';
  return changed ? `${revision} (changed since)` : String(revision);
}

function runFacts({ run, type, levelName, layout, revision, changed, releasedAt }: RunDossier, say: Say): Fact[] {
  const { sheet } = type;
  const release = `rev. ${revision}, ${say.time(releasedAt)}${changed ? '; drawn differently since' : ''}`;
  return [
    ['Level', levelName],
    ['Room or area', orNone(run.area)],
    ['Feed side', run.side === null ? NONE : `${run.side}-side`],
    ['Paired run', orNone(run.pairedRun)],
    ['Length', say.length(layout.length)],
    ['Above the floor', say.length(run.start.z)],
    ['Busway type', `${type.id}, ${type.ratedCurrentA} A`],
    ['Data sheet', sheet === null ? 'not named' : `${sheet.document}, rev. ${sheet.revision}, ${sheet.date}`],
    ['Feed', feedWords(run.feed)],
    ['Feed device', run.feed.deviceA === null ? NONE : `${run.feed.deviceA} A`],
    ['Conductors along the run', `on the ${run.conductorSide}`],
    ['Released', revision === 0 ? 'not released' : release],
    ...substituted(run.fieldHold, say),
  ];
}

/** Only where the floor did: what was put in the place of the sections that were designed. */
function substituted(hold: RunDossier['run']['fieldHold'], say: Say): Fact[] {
  return (hold?.sections ?? []).map(({ from, to, kind }) => [
    'Substituted on the floor',
    `${say.length(to - from)}${kind === 'cut' ? ' cut' : ''} at ${say.length(from)}`,
  ]);
}
