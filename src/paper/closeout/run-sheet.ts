import { lookOf } from '../../../views/drawings/states.ts';
import { crossingWords, feedWords, handWords, pieceWord } from '../../../views/drawings/strip/words.ts';
import type { Book } from '../pdf/book.ts';
import { drawDrawing } from '../pdf/drawing.ts';
import { drawFacts, type Fact } from '../pdf/facts.ts';
import { sheetTitle } from '../pdf/prose.ts';
import { drawTable, type Row } from '../pdf/table.ts';
import type { RunDossier, SupportEntry, TapEntry } from './dossier.ts';
import { decimals, NONE, orNone, type Say } from './say.ts';
import { stripParts } from './strip-of.ts';

/** The run as built: what it is, its strip, and what hangs along it with planned and measured places. */
export function runSheet(book: Book, dossier: RunDossier, say: Say): void {
  const { run, revision } = dossier;
  sheetTitle(book, `Run ${run.id}`, revision === 0 ? 'not released: all of it is planned' : '');
  drawFacts(book, runFacts(dossier, say), 6);
  const { frame } = book;
  const room = (frame.bottom - frame.top - 4) / frame.width;
  for (const part of stripParts(dossier, book.head.units, room)) drawDrawing(book, part);
  drawTable(book, pieces(dossier, say));
  drawTable(book, joints(dossier, say));
  drawTable(book, hangers(dossier, say));
  drawTable(book, tapOffs(dossier, say));
  drawTable(book, wholeRun(dossier, say));
  if (run.crossings.length + run.noJoint.length + run.noSupport.length > 0) drawTable(book, places(dossier, say));
}

export function revisionWord({ revision, changed }: Pick<RunDossier, 'revision' | 'changed'>): string {
  if (revision === 0) return 'draft';
  return changed ? `${revision} (changed since)` : String(revision);
}

function runFacts({ run, type, levelName, layout, revision, changed, releasedAt }: RunDossier, say: Say): Fact[] {
  const sheet =
    type.sheet === null ? 'not named' : `${type.sheet.document}, rev. ${type.sheet.revision}, ${type.sheet.date}`;
  return [
    ['Level', levelName],
    ['Room or area', orNone(run.area)],
    ['Feed side', run.side === null ? NONE : `${run.side}-side`],
    ['Paired run', orNone(run.pairedRun)],
    ['Length', say.length(layout.length)],
    ['Above the floor', say.length(run.start.z)],
    ['Busway type', `${type.id}, ${type.ratedCurrentA} A`],
    ['Data sheet', sheet],
    ['Feed', feedWords(run.feed)],
    ['Feed device', run.feed.deviceA === null ? NONE : `${run.feed.deviceA} A`],
    ['Conductors along the run', `on the ${run.conductorSide}`],
    [
      'Released',
      revision === 0
        ? 'not released'
        : `rev. ${revision}, ${say.time(releasedAt)}${changed ? '; drawn differently since' : ''}`,
    ],
  ];
}

function pieces({ pieces: entries }: RunDossier, say: Say) {
  return {
    title: 'Pieces',
    columns: [
      { title: 'Piece', share: 16 },
      { title: 'Kind', share: 22 },
      { title: 'Hand', share: 30 },
      { title: 'From', share: 11, align: 'right' },
      { title: 'To', share: 11, align: 'right' },
      { title: 'Length', share: 11, align: 'right' },
      { title: 'State', share: 12 },
      { title: 'Lot', share: 14 },
      { title: 'Hung by', share: 16 },
      { title: 'When', share: 15 },
    ],
    rows: entries.map(
      ({ mark, placed, state, lot, card }): Row => [
        mark,
        pieceWord(placed.kind),
        placed.hand === null ? '' : handWords(placed.hand),
        say.length(placed.from),
        say.length(placed.to),
        say.length(placed.to - placed.from),
        card.quarantine === null ? lookOf(state).word : `${lookOf(state).word}: ${card.quarantine.reason}`,
        orNone(lot),
        say.by(card.hung),
        say.at(card.hung),
      ],
    ),
    none: 'The layout of this run has no pieces: a stop bars it.',
  } as const;
}

function joints({ joints: entries }: RunDossier, say: Say) {
  return {
    title: 'Joints',
    columns: [
      { title: 'Joint', share: 16 },
      { title: 'At', share: 12, align: 'right' },
      { title: 'State', share: 14 },
      { title: 'Steps done', share: 12, align: 'right' },
      { title: 'Made up by', share: 34 },
      { title: 'Accepted by', share: 22 },
      { title: 'When', share: 18 },
      { title: 'Opened again', share: 12, align: 'right' },
    ],
    rows: entries.map(
      ({ mark, at, state, card }): Row => [
        mark,
        say.length(at),
        lookOf(state).word,
        `${card.steps.filter((step) => step.done !== null).length} of ${card.steps.length}`,
        card.installers.length === 0 ? NONE : card.installers.map((person) => person.name).join(', '),
        say.by(card.accepted),
        say.at(card.accepted),
        card.reopenings.length === 0 ? '' : `${card.reopenings.length}`,
      ],
    ),
    none: 'This run has no joints.',
  } as const;
}

function hangers({ supports, run }: RunDossier, say: Say) {
  return {
    title: `Hangers${run.rod === null ? '' : `, rod ${run.rod}`}${run.drop === null ? '' : `, ${say.length(run.drop)} to the structure`}`,
    columns: [
      { title: 'Hanger', share: 16 },
      { title: 'Planned at', share: 12, align: 'right' },
      { title: 'Measured at', share: 12, align: 'right' },
      { title: 'Moved by', share: 12, align: 'right' },
      { title: 'Load, simple spans, kg', share: 13, align: 'right' },
      { title: 'Load, continuous, kg', share: 13, align: 'right' },
      { title: 'State', share: 12 },
      { title: 'Set by', share: 18 },
      { title: 'When', share: 17 },
      { title: 'Accepted by', share: 18 },
    ],
    rows: supports.map(
      (support): Row => [
        support.mark,
        say.length(support.at),
        measuredWords(support, say),
        movedWords(support, say),
        decimals(support.loadKg, 1),
        decimals(support.continuousLoadKg, 1),
        lookOf(support.state).word,
        say.by(support.card.set),
        say.at(support.card.set),
        say.by(support.card.accepted),
      ],
    ),
    none: 'No hangers are laid out for this run.',
  } as const;
}

function measuredWords({ card, measured }: SupportEntry, say: Say): string {
  if (card.set === null) return NONE;
  return measured === null ? 'as planned' : say.length(measured);
}

function movedWords({ at, measured, card }: SupportEntry, say: Say): string {
  if (card.set === null || measured === null) return '';
  if (measured === at) return '0';
  return `${measured > at ? '+' : '-'}${say.length(Math.abs(measured - at))}`;
}

function tapOffs({ taps }: RunDossier, say: Say) {
  return {
    title: 'Tap-offs',
    columns: [
      { title: 'Tap-off', share: 14 },
      { title: 'At', share: 11, align: 'right' },
      { title: 'Phases', share: 11 },
      { title: 'Device, A', share: 8, align: 'right' },
      { title: 'Int. rating, kA', share: 9, align: 'right' },
      { title: 'Planned load', share: 12, align: 'right' },
      { title: 'Serves', share: 18 },
      { title: 'Pair', share: 10 },
      { title: 'Drop', share: 10, align: 'right' },
      { title: 'First support', share: 10, align: 'right' },
      { title: 'State', share: 10 },
      { title: 'Set by', share: 15 },
      { title: 'Checked by', share: 15 },
      { title: 'When', share: 15 },
    ],
    rows: taps.map(
      ({ tap, at, state, card }): Row => [
        tap.id,
        say.length(at),
        `${tap.phases}${tap.neutral ? ' + N' : ''}`,
        String(tap.deviceA),
        tap.interruptingKA === null ? NONE : String(tap.interruptingKA),
        loadWords(tap),
        orNone(tap.serves),
        orNone(tap.pair),
        say.length(tap.drop),
        card.dropSupported === null ? NONE : say.length(card.dropSupported.distance),
        lookOf(state).word,
        say.by(card.set),
        say.by(card.checked),
        say.at(card.checked),
      ],
    ),
    none: 'This run has no tap-offs.',
  } as const;
}

export function loadWords({ load }: TapEntry['tap']): string {
  return load.kind === 'VA' ? `${load.va} VA` : `${load.amperes} A`;
}

function wholeRun({ whole }: RunDossier, say: Say) {
  const rows: Row[] = [
    ...whole.ends.map(
      ({ end, closed }): Row => [
        end === 'near' ? 'End cap, near end' : 'End cap, far end',
        closed === null ? 'open' : 'closed',
        say.by(closed),
        say.at(closed),
      ],
    ),
    ['Unused slots', whole.slot === null ? 'not recorded as closed' : 'closed', say.by(whole.slot), say.at(whole.slot)],
    ...[...whole.reported].map(
      ([activity, quantity]): Row => [
        activity.replaceAll('-', ' '),
        quantity === 'all' ? 'reported done for the whole run' : `${quantity} reported done`,
        NONE,
        NONE,
      ],
    ),
  ];
  return {
    title: 'Ends, slots and other work reported',
    width: 0.62,
    columns: [
      { title: 'What', share: 30 },
      { title: 'Record', share: 34 },
      { title: 'By', share: 20 },
      { title: 'When', share: 18 },
    ],
    rows,
    none: '',
  } as const;
}

function places({ run }: RunDossier, say: Say) {
  const rows: Row[] = [
    ...run.crossings.map(
      (crossing): Row => [
        crossingWords(crossing),
        say.length(crossing.at - crossing.thickness / 2),
        say.length(crossing.at + crossing.thickness / 2),
        '',
      ],
    ),
    ...run.noJoint.map((zone): Row => ['no joint', say.length(zone.from), say.length(zone.to), orNone(zone.reason)]),
    ...run.noSupport.map((zone): Row => ['no hanger', say.length(zone.from), say.length(zone.to), orNone(zone.reason)]),
  ];
  return {
    title: 'Walls and zones',
    width: 0.62,
    columns: [
      { title: 'What', share: 30 },
      { title: 'From', share: 14, align: 'right' },
      { title: 'To', share: 14, align: 'right' },
      { title: 'Why', share: 44 },
    ],
    rows,
    none: '',
  } as const;
}
