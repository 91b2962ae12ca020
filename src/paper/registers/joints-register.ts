import { lookOf } from '../../../views/drawings/states.ts';
import { type Cell, mm, type Register } from './register.ts';

/** Each step of each joint: the torque log is the rows with a torque. */
export const joints: Register = {
  file: 'registers/joints.csv',
  columns: [
    'run',
    'joint',
    'at mm',
    'at',
    'state',
    'step',
    'sheet asks',
    'kind',
    'done by',
    'done at',
    'torque as written',
    'torque unit',
    'torque N·m',
    'tool',
    'calibration due',
    'poles seen',
    'contact set lot',
    'clamp lot',
    'note',
    'accepted by',
    'accepted at',
    'times reopened',
  ],
  rowsOf: function* ({ run, joints: entries }, say) {
    for (const { mark, at, state, card } of entries) {
      const head: Cell[] = [run.id, mark, mm(at), say.length(at), lookOf(state).word];
      const tail: Cell[] = [card.accepted?.by.name ?? null, card.accepted?.at ?? null, card.reopenings.length];
      if (card.steps.length === 0) yield [...head, ...Array<null>(14).fill(null), ...tail];
      for (const { index, text, kind, done } of card.steps) {
        const torque = done?.body.torque ?? null;
        yield [
          ...head,
          index + 1,
          text,
          kind,
          done?.by.name ?? null,
          done?.at ?? null,
          torque?.value ?? null,
          torque?.unit ?? null,
          done?.torque ? Number(done.torque.appliedNm.toFixed(2)) : null,
          torque?.toolId ?? null,
          torque?.calibrationDue ?? null,
          (done?.body.poles ?? [])
            .filter((pole) => pole.near && pole.far)
            .map((pole) => pole.pole)
            .join(' '),
          done?.body.lots?.contactSet ?? null,
          done?.body.lots?.clamp ?? null,
          done?.body.note ?? null,
          ...tail,
        ];
      }
    }
  },
};
