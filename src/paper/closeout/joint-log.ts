import { lookOf } from '../../../views/drawings/states.ts';
import type { UnitSystem } from '../../domain/model.ts';
import type { CardStep, JointCard, StepDone } from '../../domain/quality/joint-card.ts';
import { type JointStep, jointSheet, type StepKind } from '../../domain/quality/joint-sheet.ts';
import type { Book } from '../pdf/book.ts';
import { startPart } from '../pdf/contents.ts';
import { heading, list, sheetTitle } from '../pdf/prose.ts';
import { drawTable, type Row } from '../pdf/table.ts';
import type { JointEntry, RunDossier } from './dossier.ts';
import { remarkWords } from './remark-words.ts';
import { revisionWord } from './run-sheet.ts';
import { type Say, writtenTorque } from './say.ts';

/** Every joint of the run, step by step: who, when, with which torque and tool, and who accepted it. */
export function jointLog(book: Book, dossier: RunDossier, say: Say, under: PDFKit.PDFOutline): void {
  if (dossier.joints.length === 0) return;
  const { run, type, joints } = dossier;
  const head = { title: 'Joint log', of: run.id, revision: revisionWord(dossier) };
  startPart(book, head, { title: 'Joint log', rank: 'bookmark', under });
  sheetTitle(book, `Joints of run ${run.id}`, statedTorque(dossier));
  const { steps } = jointSheet(type);
  heading(
    book,
    steps === null ? 'The type names no make-up steps: no joint of it can be accepted' : 'Steps of the data sheet',
  );
  list(book, (steps ?? []).map(stepWords), {
    mark: (index) => `${index + 1}`,
    size: 7.5,
    tight: true,
    width: book.frame.width,
  });
  drawTable(book, {
    title: 'Joints in the order of the run',
    across: 2,
    columns: [
      { title: 'Step', share: 32, align: 'right' },
      { title: 'Done by', share: 60 },
      { title: 'When', share: 74 },
      { title: 'Torque', share: 48, align: 'right' },
      { title: 'N·m', share: 30, align: 'right' },
      { title: 'Tool, poles, lots, notes', share: 122 },
    ],
    rows: joints.flatMap((joint) => jointRows(joint, book.head.units, say)),
    none: 'This run has no joints.',
  });
}

function statedTorque({ type }: RunDossier): string {
  const { torqueNm } = type.joint;
  return torqueNm === null ? 'the data sheet states no torque' : `the data sheet states ${torqueNm} N·m`;
}

const KIND_WORDS: Readonly<Record<StepKind, string>> = {
  work: '',
  hold: 'HOLD: ',
  torque: 'TORQUE: ',
  check: 'CHECK: ',
};

function stepWords({ text, kind }: JointStep): string {
  return `${KIND_WORDS[kind]}${text}`;
}

function jointRows(joint: JointEntry, units: UnitSystem, say: Say): Row[] {
  const group = `${joint.mark}   at ${say.length(joint.at)}`;
  return [
    { group, beside: acceptanceWords(joint, say) },
    ...alike(joint.card.steps, say).map((steps) => stepRow(steps, say)),
    ...laterRows(joint.card, units, say),
  ];
}

function acceptanceWords({ card: { accepted }, state }: JointEntry, say: Say): string {
  return accepted === null ? lookOf(state).word : `accepted by ${accepted.by.name}, ${say.time(accepted.at)}`;
}

/** Steps that follow each other, done by one person in one minute with nothing else to tell, share a line: "1–4". */
function alike(steps: readonly CardStep[], say: Say): (readonly [CardStep, ...CardStep[]])[] {
  const groups: [CardStep, ...CardStep[]][] = [];
  for (const step of steps) {
    const group = groups.at(-1);
    const same =
      group !== undefined &&
      besides(step.done) === '' &&
      besides(group[0].done) === '' &&
      tellsSame(group[0], step, say);
    if (same) group.push(step);
    else groups.push([step]);
  }
  return groups;
}

function tellsSame(a: CardStep, b: CardStep, say: Say): boolean {
  return a.done?.by.id === b.done?.by.id && say.at(a.done) === say.at(b.done);
}

function stepRow(steps: readonly [CardStep, ...CardStep[]], say: Say): Row {
  const { index, done } = steps[0];
  const torque = done?.body.torque ?? null;
  return [
    steps.length === 1 ? `${index + 1}` : `${index + 1}–${index + steps.length}`,
    done === null ? 'not done' : done.by.name,
    say.at(done),
    torque === null ? '' : writtenTorque(torque),
    done?.torque ? done.torque.appliedNm.toFixed(1) : '',
    besides(done),
  ];
}

function besides(done: StepDone | null): string {
  if (done === null) return '';
  const { body, torque } = done;
  const parts = [
    body.torque === null ? null : `${body.torque.toolId}, calibrated to ${body.torque.calibrationDue}`,
    polesWords(body.poles),
    body.lots?.contactSet ? `contact set ${body.lots.contactSet}` : null,
    body.lots?.clamp ? `clamp ${body.lots.clamp}` : null,
    torque === null ? null : torqueWords(torque),
    body.note,
  ];
  return parts.filter((part) => part !== null && part !== '').join('; ');
}

function polesWords(poles: StepDone['body']['poles']): string | null {
  if (poles === null) return null;
  const names = (seen: boolean) =>
    poles
      .filter((pole) => (pole.near && pole.far) === seen)
      .map((pole) => pole.pole)
      .join(' ');
  const unseen = names(false);
  return `seen at both ends: ${names(true)}${unseen === '' ? '' : `; not at both: ${unseen}`}`;
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

function laterRows(card: JointCard, units: UnitSystem, say: Say): Row[] {
  return [
    ...card.reopenings.map(
      ({ by, at, reason, fromStep }): Row => [
        '',
        by.name,
        say.time(at),
        '',
        '',
        `opened again from step ${fromStep + 1}: ${reason}`,
      ],
    ),
    ...card.uncredited.map(({ stamp, step, remarks }): Row => {
      const why = remarks.map((remark) => remarkWords(remark, units)).join('; ');
      return [
        `${step + 1}`,
        stamp.by.name,
        say.time(stamp.at),
        '',
        '',
        `recorded and not counted${why === '' ? '' : `: ${why}`}`,
      ];
    }),
  ];
}
