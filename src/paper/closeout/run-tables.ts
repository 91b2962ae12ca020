import { lookOf } from '../../../views/drawings/states.ts';
import { handWords, pieceWord } from '../../../views/drawings/strip/words.ts';
import type { Row, Table } from '../pdf/table.ts';
import type { JointEntry, PieceEntry, RunDossier, SupportEntry } from './dossier.ts';
import { NONE, orNone, type Say } from './say.ts';

// Shares of the columns are points on a letter sheet. Marks go without the run's label, which stands in the title block.

export function pieceTable({ run, pieces }: RunDossier, say: Say): Table {
  return {
    title: 'Pieces',
    columns: [
      { title: 'Piece', share: 28 },
      { title: 'Kind', share: 78 },
      { title: 'From', share: 48, align: 'right' },
      { title: 'Length', share: 46, align: 'right' },
      { title: 'State', share: 46 },
      { title: 'Lot', share: 38 },
      { title: 'Hung by', share: 52 },
      { title: 'When', share: 76 },
    ],
    rows: pieces.map(
      (piece): Row => [
        shortMark(piece.mark, run.id),
        kindWords(piece),
        say.length(piece.placed.from),
        say.length(piece.placed.to - piece.placed.from),
        pieceStateWords(piece),
        orNone(piece.lot),
        say.by(piece.card.hung),
        say.at(piece.card.hung),
      ],
    ),
    none: 'The layout of this run has no pieces: a stop bars it.',
  };
}

function kindWords({ placed: { kind, hand } }: PieceEntry): string {
  return hand === null ? pieceWord(kind) : `${pieceWord(kind)}, ${handWords(hand)}`;
}

function pieceStateWords({ state, card: { quarantine } }: PieceEntry): string {
  return quarantine === null ? lookOf(state).word : `${lookOf(state).word}: ${quarantine.reason}`;
}

export function jointTable({ run, joints }: RunDossier, say: Say): Table {
  return {
    title: 'Joints',
    columns: [
      { title: 'Joint', share: 26 },
      { title: 'At', share: 48, align: 'right' },
      { title: 'State', share: 46 },
      { title: 'Steps', share: 38, align: 'right' },
      { title: 'Accepted by', share: 58 },
      { title: 'When', share: 68 },
    ],
    rows: joints.map(
      (joint): Row => [
        shortMark(joint.mark, run.id),
        say.length(joint.at),
        jointStateWords(joint),
        `${joint.card.steps.filter((step) => step.done !== null).length} of ${joint.card.steps.length}`,
        say.by(joint.card.accepted),
        say.at(joint.card.accepted),
      ],
    ),
    none: 'This run has no joints.',
  };
}

function jointStateWords({ state, card }: JointEntry): string {
  const times = card.reopenings.length;
  return times === 0
    ? lookOf(state).word
    : `${lookOf(state).word}, opened again ${times === 1 ? 'once' : `${times} times`}`;
}

export function hangerTable({ run, supports }: RunDossier, say: Say): Table {
  const rod = run.rod === null ? '' : `, rod ${run.rod}`;
  const drop = run.drop === null ? '' : `, ${say.length(run.drop)} to the structure`;
  return {
    title: `Hangers${rod}${drop}`,
    columns: [
      { title: 'Hanger', share: 36 },
      { title: 'Planned at', share: 48, align: 'right' },
      { title: 'Measured at', share: 52, align: 'right' },
      { title: 'Moved by', share: 42, align: 'right' },
      { title: 'Load, simple spans', share: 46, align: 'right' },
      { title: 'Load, continuous', share: 46, align: 'right' },
      { title: 'State', share: 40 },
      { title: 'Set by', share: 50 },
      { title: 'When', share: 77 },
      { title: 'Accepted by', share: 50 },
    ],
    rows: supports.map(
      (support): Row => [
        shortMark(support.mark, run.id),
        say.length(support.at),
        measuredWords(support, say),
        movedWords(support, say),
        say.weight(support.loadKg),
        say.weight(support.continuousLoadKg),
        lookOf(support.state).word,
        say.by(support.card.set),
        say.at(support.card.set),
        say.by(support.card.accepted),
      ],
    ),
    none: 'No hangers are laid out for this run.',
  };
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

function shortMark(mark: string, run: string): string {
  return mark.startsWith(`${run}-`) ? mark.slice(run.length + 1) : mark;
}
