import type { JointRefusal } from '../../../src/domain/quality/refusal.ts';
import { counted, listed, quoted, time, torque } from './figures.ts';
import type { WordsFor } from './told.ts';

export const JOINT_WORDS: WordsFor<JointRefusal> = {
  'joint.no-step-list': () => ({
    what: 'The sheet of this busway type names no steps for the joint, so the joint can be neither recorded nor accepted.',
    number: null,
    remedy: "The office enters the steps of the maker's sheet, with its revision, in the busway type.",
  }),
  'joint.unknown-step': ({ step, steps }) => ({
    what: 'The sheet has no such step.',
    number: `step ${step} of ${steps}`,
    remedy: 'Load the card again and record the step that it shows next.',
  }),
  'joint.sheet-changed': ({ step, shown, now }) => ({
    what: `Step ${step} of the sheet reads otherwise than on your card.`,
    number: `now: ${quoted(now)}; your card: ${quoted(shown)}`,
    remedy: 'Load the card again, read the step as it stands, and record it then.',
  }),
  'joint.step-done': ({ step, text, by, at }, say) => ({
    what: `Step ${step} is done already: ${quoted(text)}.`,
    number: `by ${by}, ${time(at, say)}`,
    remedy: 'Go on with the next step. To change what was recorded, correct that record with the cause.',
  }),
  'joint.out-of-order': ({ step, next, nextText }) => ({
    what: `Step ${step} comes too early.`,
    number: `next is step ${next}: ${quoted(nextText)}`,
    remedy: `Do step ${next} first, or record it if it is done.`,
  }),
  'joint.hold-first': ({ step, text, hold, holdText }) => ({
    what: `Step ${step} (${quoted(text)}) hides what step ${hold} has to see.`,
    number: `hold point, step ${hold}: ${quoted(holdText)}`,
    remedy: `See every pole seated at both ends and record step ${hold}. If the lower clamp is on already, take it off, look, and reopen the joint.`,
  }),
  'joint.neighbour-not-hung': ({ mark, state }) => ({
    what: `${mark}, which this joint joins, is not hung.`,
    number: `its state: ${state}`,
    remedy: 'Hang it and record its side first.',
  }),
  'joint.no-neighbour': () => ({
    what: 'The record knows no piece at this joint.',
    number: null,
    remedy: 'The office looks at the release of this run; do not go on with the joint.',
  }),
  'joint.poles-missing': ({ step, missing, of }) => ({
    what: `Step ${step} is the hold point: every pole is seen seated at both ends.`,
    number: `${of - missing.length} of ${of} seen; missing: ${listed(missing)}`,
    remedy:
      'Look at those that are missing and tick them. One that stands proud is not ticked: seat it again, or reopen the joint.',
  }),
  'joint.pole-unknown': ({ pole }) => ({
    what: `This busway has no pole ${pole}.`,
    number: null,
    remedy: 'Load the card again; it shows the poles of this type.',
  }),
  'joint.torque-missing': ({ step, text }) => ({
    what: `Step ${step} needs its torque: ${quoted(text)}.`,
    number: null,
    remedy: 'Enter the value, its unit, the tool and the last day of its calibration.',
  }),
  'joint.torque-out': ({ step, appliedNm, statedNm, leastNm, greatestNm }) => ({
    what: `The torque of step ${step} is outside what the sheet allows.`,
    number: `${torque(appliedNm)}; the sheet states ${torque(statedNm)}, from ${torque(leastNm)} to ${torque(greatestNm)}`,
    remedy:
      "Look at the unit first. Then do as the maker's sheet says for a bolt that is too loose or too tight, and record the new value.",
  }),
  'joint.check-own-work': ({ name, step }) => ({
    what: `Step ${step} is a check of the work, and ${name} did some of that work.`,
    number: null,
    remedy: 'Another qualified person checks, under their own login.',
  }),
  'joint.accepted-already': ({ by, at }, say) => ({
    what: 'The joint is accepted already.',
    number: `by ${by}, ${time(at, say)}`,
    remedy: 'Reopen it with the reason if it has to be made again.',
  }),
  'joint.not-closed': ({ next, nextText, open }) => ({
    what: 'The joint cannot be accepted yet.',
    number: `${counted(open, 'step', 'steps')} open; next is step ${next}: ${quoted(nextText)}`,
    remedy: 'Finish and record the steps first.',
  }),
  'joint.own-work': ({ name }) => ({
    what: `${name} did steps of this joint, and nobody accepts their own joint.`,
    number: null,
    remedy: 'Another qualified person looks at it and accepts, under their own login.',
  }),
  'joint.torque-unknown': ({ step, appliedNm }) => ({
    what: `The sheet of this busway type states no torque, so that of step ${step} cannot be judged.`,
    number: `recorded: ${torque(appliedNm)}`,
    remedy: "The office enters the torque of the maker's sheet in the busway type; then the joint can be accepted.",
  }),
  'joint.torque-difference-unread': ({ statedNm, differences }) => ({
    what: "A torque differs from the sheet's, which states no tolerance.",
    number: `the sheet: ${torque(statedNm)}; ${listed(differences.map(({ step, appliedNm }) => `step ${step}: ${torque(appliedNm)}`))}`,
    remedy:
      'Read the differences, ask the maker where in doubt, and say on the acceptance that they were read. Or reopen the joint.',
  }),
  'joint.nothing-to-reopen': () => ({
    what: 'No step of this joint is done, so there is nothing to reopen.',
    number: null,
    remedy: 'Look whether another joint was meant.',
  }),
};
