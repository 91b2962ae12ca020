import { lookOf } from '../../../views/drawings/states.ts';
import { mm, type Register } from './register.ts';

/** Each hanger with its planned and its measured place. */
export const hangers: Register = {
  file: 'registers/hangers.csv',
  columns: [
    'run',
    'hanger',
    'planned mm',
    'planned',
    'measured mm',
    'measured',
    'load simple spans kg',
    'load continuous kg',
    'state',
    'set by',
    'set at',
    'accepted by',
    'accepted at',
  ],
  rowsOf: function* ({ run, supports }, say) {
    for (const { mark, at, measured, loadKg, continuousLoadKg, state, card } of supports) {
      yield [
        run.id,
        mark,
        mm(at),
        say.length(at),
        mm(measured),
        measured === null ? null : say.length(measured),
        Number(loadKg.toFixed(2)),
        Number(continuousLoadKg.toFixed(2)),
        lookOf(state).word,
        card.set?.by.name ?? null,
        card.set?.at ?? null,
        card.accepted?.by.name ?? null,
        card.accepted?.at ?? null,
      ];
    }
  },
};
