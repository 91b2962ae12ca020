import { type Entered, type EntryOf, money, number, text } from './form/entries.ts';
import { readFragment, writeFragment } from './form/fragment-form.ts';
import { type EntryLog, newLog } from './form/read-entry.ts';
import type { BidDocument, ProjectDocument } from './job-document.ts';

const ENTRIES: readonly EntryOf[] = [
  money('materials'),
  number('taxPercent'),
  money('other'),
  money('supervision'),
  number('contingencyP'),
  number('overheadPercent'),
  text('profit.kind'),
  number('profit.percent'),
];

type Project = Pick<ProjectDocument, 'units' | 'currency'>;

export function writeBidForm(bid: BidDocument, project: Project): Entered {
  return writeFragment(bid, ENTRIES, project);
}

/** A bid's entries as typed, for the job document's own check. A kind of profit without a percentage is no profit yet. */
export function readBidForm(
  entered: Entered,
  project: Project,
): Pick<EntryLog, 'faults' | 'questions'> & { readonly bid: BidDocument } {
  const log = newLog(project);
  const { profit, ...draft } = readFragment(entered, ENTRIES, null, log) as BidDocument;
  const hasProfit = (entered['profit.percent'] ?? '').trim() !== '';
  return { bid: hasProfit && profit ? { ...draft, profit } : draft, faults: log.faults, questions: log.questions };
}
