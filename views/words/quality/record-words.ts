import type { RecordRefusal } from '../../../src/domain/quality/refusal.ts';
import { time } from './figures.ts';
import type { WordsFor } from './told.ts';

/** What a kind of record is called on pages. */
const KINDS: Readonly<Record<string, string>> = {
  'piece-on-site': 'delivery of a piece',
  'piece-hung': 'hanging of a piece',
  'piece-quarantined': 'quarantine',
  'piece-released': 'release from quarantine',
  'joint-step': 'joint step',
  'joint-accepted': 'acceptance of a joint',
  'joint-reopened': 'reopening of a joint',
  'support-set': 'setting of a hanger',
  'support-accepted': 'acceptance of a hanger',
  'tap-on-site': 'delivery of a tap-off',
  'tap-set': 'setting of a tap-off',
  'tap-checked': 'check of a tap-off',
  'drop-supported': 'support of a drop',
  'end-closed': 'closing of an end',
  'end-opened': 'opening of an end',
  'slot-closed': 'closing of the slot',
  'slot-opened': 'opening of the slot',
  'activity-done': 'count of work done',
  'insulation-test': 'insulation test',
  'record-withdrawn': 'withdrawal',
};

export function kindWord(kind: string): string {
  return KINDS[kind] ?? kind;
}

export const RECORD_WORDS: WordsFor<RecordRefusal> = {
  'record.in-future': ({ at, now }, say) => ({
    what: 'This record is dated in the future.',
    number: `done ${time(at, say)}, now ${time(now, say)}`,
    remedy: "Correct the time when it was done, or the telephone's clock.",
  }),
  'record.before-previous': ({ at, previousAt }, say) => ({
    what: 'This record is dated before the one that it follows.',
    number: `${time(at, say)}, the last one is of ${time(previousAt, say)}`,
    remedy: 'Correct the time. If the earlier record has the wrong time, correct that one first, with the cause.',
  }),
  'record.stale': ({ seen, current }) => ({
    what: 'Somebody recorded here since this page was loaded.',
    number: `you saw version ${seen}, version ${current} stands`,
    remedy: 'Look at what stands now and record again; nothing was overwritten.',
  }),
  'record.other-subject': ({ kind, subject }) => ({
    what: `A ${kindWord(kind)} cannot be recorded on a ${subject}.`,
    number: null,
    remedy: 'Open the page of the right thing and record it there.',
  }),
  'record.nothing-superseded': () => ({
    what: 'The record to be corrected does not stand in this book.',
    number: null,
    remedy: 'Open the card again and choose the record to correct.',
  }),
  'record.supersedes-another-kind': ({ kind, replaced }) => ({
    what: `A ${kindWord(replaced)} cannot be corrected by a ${kindWord(kind)}.`,
    number: null,
    remedy: 'Correct it by a record of the same kind, or withdraw it with its cause.',
  }),
  'record.already-superseded': () => ({
    what: 'That record was corrected already.',
    number: null,
    remedy: 'Correct the record that stands now, not the one that it replaced.',
  }),
  'record.withdrawal-names-none': () => ({
    what: 'The withdrawal names no record.',
    number: null,
    remedy: 'Choose the record that should not have been made and give the cause.',
  }),
  'record.cannot-withdraw': ({ kind }) => ({
    what: `A ${kindWord(kind)} is not taken back.`,
    number: null,
    remedy: 'Do the work again, or have the piece released, and record that. What was said stays in the book.',
  }),
  'record.failed-test-withdrawn': ({ verdict }) => ({
    what: 'A test that did not pass cannot be deleted or withdrawn.',
    number: `its verdict: ${verdict}`,
    remedy: 'Test again; mark the old test superseded, with the cause. Both stay in the book.',
  }),
};
