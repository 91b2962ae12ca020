import { lookOf } from '../../../views/drawings/states.ts';
import { mm, type Register } from './register.ts';

/** The tap-off directory: what feeds which equipment, from where on which run. */
export const tapDirectory: Register = {
  file: 'registers/tap-offs.csv',
  columns: [
    'feed side',
    'run',
    'tap-off',
    'at mm',
    'at',
    'phases',
    'neutral',
    'device A',
    'interrupting rating kA',
    'planned load',
    'load unit',
    'power factor',
    'serves',
    'pair',
    'drop mm',
    'first drop support mm',
    'state',
    'set by',
    'set at',
    'checked by',
    'checked at',
  ],
  rowsOf: function* ({ run, taps }, say) {
    for (const { tap, at, state, card } of taps) {
      yield [
        run.side,
        run.id,
        tap.id,
        mm(at),
        say.length(at),
        tap.phases,
        tap.neutral ? 'yes' : 'no',
        tap.deviceA,
        tap.interruptingKA,
        tap.load.kind === 'VA' ? tap.load.va : tap.load.amperes,
        tap.load.kind,
        tap.powerFactor,
        tap.serves,
        tap.pair,
        mm(tap.drop),
        mm(card.dropSupported?.distance ?? null),
        lookOf(state).word,
        card.set?.by.name ?? null,
        card.set?.at ?? null,
        card.checked?.by.name ?? null,
        card.checked?.at ?? null,
      ];
    }
  },
};
