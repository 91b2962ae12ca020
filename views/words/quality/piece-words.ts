import type { PieceRefusal } from '../../../src/domain/quality/refusal.ts';
import { listed, quoted, time } from './figures.ts';
import type { WordsFor } from './told.ts';

const NAMES = { stock: 'section', cut: 'section', elbow: 'elbow', tee: 'tee' } as const;

export const PIECE_WORDS: WordsFor<PieceRefusal> = {
  'piece.quarantined': ({ mark, reason }) => ({
    what: `${mark} is in quarantine${reason === null ? '' : `: ${quoted(reason)}`}.`,
    number: null,
    remedy:
      'Leave it out of the work. Office and inspector release it, each signing for themselves, or it is replaced.',
  }),
  'piece.not-quarantined': ({ mark }) => ({
    what: `${mark} is not in quarantine.`,
    number: null,
    remedy: 'Nothing is to be released here; look whether another piece was meant.',
  }),
  'piece.already-quarantined': ({ mark, reason }) => ({
    what: `${mark} is in quarantine already: ${quoted(reason)}.`,
    number: null,
    remedy: 'Correct that record if its reason is incomplete.',
  }),
  'piece.already-on-site': ({ mark, by, at }, say) => ({
    what: `${mark} is on site already.`,
    number: `recorded by ${by}, ${time(at, say)}`,
    remedy: 'Look at the mark on the piece; if the first record is wrong, correct it with the cause.',
  }),
  'piece.already-hung': ({ mark, by, at }, say) => ({
    what: `${mark} hangs already.`,
    number: `recorded by ${by}, ${time(at, say)}`,
    remedy: 'Look at the mark on the piece; if the first record is wrong, correct it with the cause.',
  }),
  'piece.side-turn': ({ mark, needed, seen, kind }) => ({
    what: `${mark} has its conductors on the ${seen}; this run has them on the ${needed}.`,
    number: null,
    remedy: `Turn the ${NAMES[kind]} end for end, never slot up, and look at both ends again; then look at its neighbours too.`,
  }),
  'piece.side-reorder': ({ mark, needed, seen, kind, neededHand, seenHand }) => ({
    what: `Stop: ${mark} is the wrong ${NAMES[kind]}. Its conductors are on the ${seen}, the run has them on the ${needed}.`,
    number: neededHand === null ? null : `needed: ${neededHand}; this one: ${seenHand ?? 'unknown'}`,
    remedy: `Turning it end for end does not help: the same ${NAMES[kind]} comes out. Put it in quarantine as a nonconformance and order the right one.`,
  }),
  'piece.confirmed-alone': ({ name }) => ({
    what: `${name} hangs the piece and is named as the second person too.`,
    number: null,
    remedy: 'Name who else looked at both ends, or leave the name out.',
  }),
  'piece.joints-begun': ({ mark, joints }) => ({
    what: `${mark} is joined already, so its hanging is not taken back.`,
    number: `work recorded on ${listed(joints)}`,
    remedy: 'Withdraw or reopen the joints first, if the piece really does not hang.',
  }),
  'piece.release-role': ({ as, role }) => ({
    what: `This signature is the ${as}'s; you are here as ${role}.`,
    number: null,
    remedy: `Somebody with the role ${as} signs under their own login.`,
  }),
  'piece.release-signed': ({ as, by, at }, say) => ({
    what: `The ${as} has signed already.`,
    number: `${by}, ${time(at, say)}`,
    remedy: 'The other signature is still needed, by another person.',
  }),
  'piece.release-same-person': ({ name }) => ({
    what: `${name} has signed for the other role; release takes two people.`,
    number: null,
    remedy: 'Somebody else gives the second signature.',
  }),
};
