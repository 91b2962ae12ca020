import type { TapRefusal } from '../../../src/domain/quality/refusal.ts';
import { listed, long, time } from './figures.ts';
import type { WordsFor } from './told.ts';

export const TAP_WORDS: WordsFor<TapRefusal> = {
  'tap.not-isolated': ({ missing }) => ({
    what: 'A tap-off is set only on a run that is isolated and proved without voltage.',
    number: `not confirmed: ${listed(missing)}`,
    remedy: "Stop. A qualified person isolates, locks and proves by the site's rules; then record the tap-off.",
  }),
  'tap.proved-after': ({ provedAt, at }, say) => ({
    what: 'Absence of voltage was proved after the tap-off was set.',
    number: `proved ${time(provedAt, say)}, set ${time(at, say)}`,
    remedy: 'Correct the times if one is wrong. If they are right, report it: the work was done before it was proved.',
  }),
  'tap.device-not-locked': ({ missing }) => ({
    what: "The tap-off's device must be off and locked before the tap-off is set.",
    number: `not confirmed: ${listed(missing)}`,
    remedy: 'Switch it off, lock it, and record it again.',
  }),
  'tap.no-steps': () => ({
    what: "The steps of the tap-off's own sheet are missing.",
    number: null,
    remedy: "Tick the steps of the maker's sheet for this tap-off as they were done.",
  }),
  'tap.phases-differ': ({ planned, found }) => ({
    what: 'This tap-off is on another phase than the plan.',
    number: `planned ${planned}, in your hand ${found}`,
    remedy:
      'Look for the right tap-off. If the plan has to change, the office changes it first: balance is reckoned again.',
  }),
  'tap.piece-not-hung': ({ mark, state }) => ({
    what: `${mark}, on which this tap-off sits, is not hung.`,
    number: `its state: ${state}`,
    remedy: 'Hang and record the section first.',
  }),
  'tap.already-on-site': ({ by, at }, say) => ({
    what: 'The tap-off is on site already.',
    number: `recorded by ${by}, ${time(at, say)}`,
    remedy: 'Look at the label; correct the first record, with the cause, if it is wrong.',
  }),
  'tap.already-set': ({ by, at }, say) => ({
    what: 'The tap-off is set already.',
    number: `by ${by}, ${time(at, say)}`,
    remedy: 'To change what was recorded, correct that record with the cause.',
  }),
  'tap.not-set': () => ({
    what: 'The tap-off is not set yet.',
    number: null,
    remedy: 'It is set and recorded first, then checked.',
  }),
  'tap.already-checked': ({ by, at }, say) => ({
    what: 'The tap-off is checked already.',
    number: `by ${by}, ${time(at, say)}`,
    remedy: 'Nothing more is needed here.',
  }),
  'tap.own-work': ({ name }) => ({
    what: `${name} set this tap-off, and this job asks a second person to check.`,
    number: null,
    remedy: 'Another qualified person checks it, under their own login.',
  }),
  'tap.removed': () => ({
    what: 'This tap-off was taken out.',
    number: null,
    remedy: 'Its records stay; a new tap-off gets its own.',
  }),
  'tap.drop-unsupported': ({ limit }, say) => ({
    what: 'The drop of this tap-off is not recorded as supported.',
    number: limit === null ? null : `first support within ${long(limit, say)} of the tap-off`,
    remedy: 'Support the drop, record how far from the tap-off, and check then.',
  }),
  'tap.drop-too-far': ({ distance, limit, source }, say) => ({
    what: 'The first support of the drop is too far from the tap-off.',
    number: `${long(distance, say)}; ${source} asks ${long(limit, say)} at most`,
    remedy: 'Set a support nearer. The local code and the authority having jurisdiction decide.',
  }),
  'tap.no-drop': () => ({
    what: 'This tap-off has no drop in the plan.',
    number: null,
    remedy: 'Look whether another tap-off was meant, or have the office add the drop.',
  }),
};
