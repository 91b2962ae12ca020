import { lookOf } from '../../../views/drawings/states.ts';
import type { CardStep, JointCard, StepDone } from '../../domain/quality/joint-card.ts';
import type { StepKind } from '../../domain/quality/joint-sheet.ts';
import type { Book } from '../pdf/book.ts';
import { startPart } from '../pdf/contents.ts';
import { sheetTitle } from '../pdf/prose.ts';
import { drawTable, type Row } from '../pdf/table.ts';
import type { JointEntry, RunDossier } from './dossier.ts';
import { remarkWords } from './remark-words.ts';
import { revisionWord } from './run-sheet.ts';
import { NONE, type Say, writtenTorque } from './say.ts';

const KIND_WORDS: Readonly<Record<StepKind, string>> = {
  work: '',
  hold: 'hold point: seen pole by pole',
  torque: 'torque',
  check: "another person's check",
};

/** Every joint of the run, step by step: who, when, with which torque and tool, and who accepted it. */
export function jointLog(book: Book, dossier: RunDossier, say: Say, under: PDFKit.PDFOutline): void {
  if (dossier.joints.length === 0) return;
  const { run, type } = dossier;
  startPart(
    book,
    { title: 'Joint log', of: run.id, revision: revisionWord(dossier) },
    { title: 'Joint log', rank: 'bookmark', under },
  );
  sheetTitle(book, `Joints of run ${run.id}`, statedTorque(dossier));
  drawTable(book, {
    title:
      type.joint.steps === null
        ? 'The type names no make-up steps: no joint of it can be accepted'
        : 'Steps in the order of the data sheet',
    columns: [
      { title: 'Step', share: 5, align: 'right' },
      { title: 'What the data sheet asks', share: 42 },
      { title: 'Asks for', share: 15 },
      { title: 'Done by', share: 16 },
      { title: 'When', share: 14 },
      { title: 'Torque as written', share: 13, align: 'right' },
      { title: 'N·m', share: 8, align: 'right' },
      { title: 'Tool, calibration due', share: 17 },
      { title: 'Poles, lots, notes', share: 30 },
    ],
    rows: rowsOf(book, dossier, say),
    none: 'This run has no joints.',
  });
}

function statedTorque({ type }: RunDossier): string {
  return type.joint.torqueNm === null
    ? 'the data sheet states no torque'
    : `the data sheet states ${type.joint.torqueNm} N·m`;
}

function* rowsOf(book: Book, { joints, run }: RunDossier, say: Say): Generator<Row> {
  for (const joint of joints) {
    yield { group: `${joint.mark}   at ${say.length(joint.at)}`, beside: acceptanceWords(joint, say) };
    for (const step of joint.card.steps) yield stepRow(step, say);
    for (const row of afterRows(joint.card, book, say, run.id)) yield row;
  }
}

function acceptanceWords({ card, state }: JointEntry, say: Say): string {
  const { accepted } = card;
  if (accepted === null) return lookOf(state).word;
  return `accepted by ${accepted.by.name}, ${say.time(accepted.at)}`;
}

function stepRow({ index, text, kind, done }: CardStep, say: Say): Row {
  const torque = done?.body.torque ?? null;
  return [
    String(index + 1),
    text,
    KIND_WORDS[kind],
    say.by(done),
    say.at(done),
    torque === null ? '' : writtenTorque(torque),
    done?.torque ? done.torque.appliedNm.toFixed(1) : '',
    torque === null ? '' : `${torque.toolId}, ${torque.calibrationDue}`,
    done === null ? '' : besides(done),
  ];
}

function besides({ body, torque }: StepDone): string {
  const lots = [
    body.lots?.contactSet ? `contact set lot ${body.lots.contactSet}` : null,
    body.lots?.clamp ? `clamp lot ${body.lots.clamp}` : null,
  ];
  return [polesWords(body.poles), ...lots, torque === null ? null : torqueWords(torque), body.note]
    .filter((part) => part !== null && part !== '')
    .join('; ');
}

function polesWords(poles: StepDone['body']['poles']): string | null {
  if (poles === null) return null;
  const unseen = poles.filter((pole) => !pole.near || !pole.far).map((pole) => pole.pole);
  const seen = `seen seated at both ends: ${poles
    .filter((pole) => pole.near && pole.far)
    .map((pole) => pole.pole)
    .join(' ')}`;
  return unseen.length === 0 ? seen : `${seen}; not at both: ${unseen.join(' ')}`;
}

function torqueWords(torque: NonNullable<StepDone['torque']>): string | null {
  switch (torque.verdict) {
    case 'within':
      return 'within the stated tolerance';
    case 'outside':
      return 'outside the stated tolerance';
    case 'as-stated':
      return null;
    case 'unjudged':
      return torque.differencePercent === null
        ? null
        : `${torque.differencePercent > 0 ? '+' : ''}${torque.differencePercent.toFixed(1)} % from stated, no tolerance stated`;
  }
}

function* afterRows(card: JointCard, book: Book, say: Say, run: string): Generator<Row> {
  for (const reopening of card.reopenings) {
    yield [
      '',
      `Opened again from step ${reopening.fromStep + 1}: ${reopening.reason}`,
      '',
      reopening.by.name,
      say.time(reopening.at),
      '',
      '',
      '',
      '',
    ];
  }
  for (const kept of card.uncredited) {
    const why = kept.remarks.map((remark) => remarkWords(remark, book.head.units)).join('; ');
    yield [
      '',
      `Step ${kept.step + 1} recorded and not counted${why === '' ? '' : `: ${why}`}`,
      '',
      kept.stamp.by.name,
      say.time(kept.stamp.at),
      '',
      '',
      '',
      '',
    ];
  }
  if (card.steps.length === 0) yield ['', `No steps: the type of ${run} names none`, '', NONE, NONE, '', '', '', ''];
}
