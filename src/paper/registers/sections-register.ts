import { lookOf } from '../../../views/drawings/states.ts';
import { handWords } from '../../../views/drawings/strip/words.ts';
import { mm, type Register } from './register.ts';

/** Each section and fitting with its lot and who hung it. */
export const sections: Register = {
  file: 'registers/sections.csv',
  columns: [
    'run',
    'piece',
    'kind',
    'hand',
    'from mm',
    'to mm',
    'length mm',
    'length',
    'state',
    'lot',
    'on site',
    'hung by',
    'hung at',
    'quarantine',
  ],
  rowsOf: function* ({ run, pieces }, say) {
    for (const { mark, placed, state, lot, card } of pieces) {
      yield [
        run.id,
        mark,
        placed.kind,
        placed.hand === null ? null : handWords(placed.hand),
        mm(placed.from),
        mm(placed.to),
        mm(placed.to - placed.from),
        say.length(placed.to - placed.from),
        lookOf(state).word,
        lot,
        card.onSite?.at ?? null,
        card.hung?.by.name ?? null,
        card.hung?.at ?? null,
        card.quarantine?.reason ?? null,
      ];
    }
  },
};
