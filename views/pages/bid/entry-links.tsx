import type { JSX } from 'preact';
import type { BidDocument } from '../../../src/document/job-document.ts';

/** The forms of the bid that have a page of their own, each with what it holds now. */
export function EntryLinks({ jobId, entries }: { jobId: string; entries: BidDocument }): JSX.Element {
  const base = `/jobs/${jobId}/bid`;
  return (
    <ul>
      <li>
        <a href={`${base}/quotes`}>Quotes, levelled side by side</a>: {said(entries.quotes, 'quote')}
      </li>
      <li>
        <a href={`${base}/costs`}>Lifts, tools and supervision by time, subcontracts, taxes by category</a>:{' '}
        {[
          said(entries.timed, 'row'),
          said(entries.subcontracts, 'subcontract'),
          said(entries.taxes, 'tax', 'taxes'),
        ].join(', ')}
      </li>
      <li>
        <a href={`${base}/offer`}>Alternates, unit prices, terms and addenda</a>:{' '}
        {[
          said(entries.alternates, 'alternate'),
          said(entries.unitPrices, 'unit price'),
          said(entries.addenda, 'addendum', 'addenda'),
        ].join(', ')}
      </li>
    </ul>
  );
}

function said(list: readonly unknown[] | undefined, one: string, several = `${one}s`): string {
  const count = list?.length ?? 0;
  return count === 0 ? `no ${one}` : `${count} ${count === 1 ? one : several}`;
}
