import { lookOf } from '../../../views/drawings/states.ts';
import { crossingWords } from '../../../views/drawings/strip/words.ts';
import type { Row, Table } from '../pdf/table.ts';
import type { RunDossier, TapEntry } from './dossier.ts';
import { NONE, orNone, type Say } from './say.ts';

export function tapTable({ taps }: RunDossier, say: Say): Table {
  return {
    title: 'Tap-offs',
    columns: [
      { title: 'Tap-off', share: 32 },
      { title: 'At', share: 46, align: 'right' },
      { title: 'Phases', share: 60 },
      { title: 'Device, A', share: 36, align: 'right' },
      { title: 'Int. rating, kA', share: 38, align: 'right' },
      { title: 'Planned load', share: 48, align: 'right' },
      { title: 'Serves', share: 80 },
      { title: 'Pair', share: 52 },
      { title: 'Drop', share: 46, align: 'right' },
      { title: 'First support of the drop', share: 58, align: 'right' },
      { title: 'State', share: 44 },
      { title: 'Set by', share: 56 },
      { title: 'Checked by', share: 58 },
      { title: 'When', share: 70 },
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
        say.length(card.dropSupported?.distance ?? null),
        lookOf(state).word,
        say.by(card.set),
        say.by(card.checked),
        say.at(card.checked),
      ],
    ),
    none: 'This run has no tap-offs.',
  };
}

function loadWords({ load }: TapEntry['tap']): string {
  return load.kind === 'VA' ? `${load.va} VA` : `${load.amperes} A`;
}

export function wholeRunTable({ whole }: RunDossier, say: Say): Table {
  const ends = whole.ends.map(
    ({ end, closed }): Row => [`${end} end cap`, closed === null ? 'open' : 'closed', say.by(closed), say.at(closed)],
  );
  const slot: Row = ['unused slots', whole.slot === null ? 'open' : 'closed', say.by(whole.slot), say.at(whole.slot)];
  const reported = [...whole.reported].map(
    ([activity, quantity]): Row => [
      activity.replaceAll('-', ' '),
      quantity === 'all' ? 'all done' : `${quantity} done`,
      '',
      '',
    ],
  );
  return {
    title: 'Ends, slots, work reported',
    columns: [
      { title: 'What', share: 58 },
      { title: 'Record', share: 48 },
      { title: 'By', share: 54 },
      { title: 'When', share: 76 },
    ],
    rows: [...ends, slot, ...reported],
    none: '',
  };
}

export function placeTable({ run }: RunDossier, say: Say): Table {
  const crossings = run.crossings.map(
    (crossing): Row => [
      crossingWords(crossing),
      say.length(crossing.at - crossing.thickness / 2),
      say.length(crossing.at + crossing.thickness / 2),
      '',
    ],
  );
  const zone =
    (what: string) =>
    (place: { from: number; to: number; reason: string | null }): Row => [
      what,
      say.length(place.from),
      say.length(place.to),
      orNone(place.reason),
    ];
  return {
    title: 'Walls and zones',
    part: { from: 0, width: 0.6 },
    columns: [
      { title: 'What', share: 30 },
      { title: 'From', share: 14, align: 'right' },
      { title: 'To', share: 14, align: 'right' },
      { title: 'Why', share: 44 },
    ],
    rows: [...crossings, ...run.noJoint.map(zone('no joint')), ...run.noSupport.map(zone('no hanger'))],
    none: '',
  };
}
