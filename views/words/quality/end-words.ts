import type { RunEnd } from '../../../src/domain/quality/record.ts';
import type { EndRefusal } from '../../../src/domain/quality/refusal.ts';
import { listed, time } from './figures.ts';
import type { WordsFor } from './told.ts';

const ENDS: Readonly<Record<RunEnd, string>> = { near: 'near end', far: 'far end' };

export const END_WORDS: WordsFor<EndRefusal> = {
  'end.not-open': ({ end, ends }) => ({
    what: `The ${ENDS[end]} of this run is where it is fed, so it takes no cap.`,
    number: `open: ${listed(ends.map((open) => ENDS[open]))}`,
    remedy: 'Record the cap at the open end.',
  }),
  'end.not-ready': ({ end, missing }) => ({
    what: `The ${ENDS[end]} is not closed as its card asks.`,
    number: `missing: ${listed(missing)}`,
    remedy: 'Fit the cap and set its screw, then record it again. An open end is an open live end later.',
  }),
  'end.already-closed': ({ end, by, at }, say) => ({
    what: `The ${ENDS[end]} is closed already.`,
    number: `by ${by}, ${time(at, say)}`,
    remedy: 'Nothing more is needed here.',
  }),
  'end.not-closed': ({ end }) => ({
    what: `The ${ENDS[end]} is not closed, so it cannot be opened.`,
    number: null,
    remedy: 'Look whether another end was meant.',
  }),
  'end.piece-not-hung': ({ end, mark, state }) => ({
    what: `${mark}, at the ${ENDS[end]}, is not hung.`,
    number: `its state: ${state}`,
    remedy: 'Hang and record it first; the cap comes last.',
  }),
  'slot.already-closed': ({ by, at }, say) => ({
    what: 'The slot is closed already.',
    number: `by ${by}, ${time(at, say)}`,
    remedy: 'Record its opening first if it was opened since.',
  }),
  'slot.not-closed': () => ({
    what: 'The slot is not recorded as closed, so it cannot be opened.',
    number: null,
    remedy: 'Nothing needs to be recorded.',
  }),
  'activity.over-counted': ({ activity, total, done, asked }) => ({
    what: `That is more ${activity} than this run has.`,
    number: `${done} reported before and ${asked} now, of ${total}`,
    remedy: 'Count again. If the run has grown, the office releases it first.',
  }),
};
