import type { JSX } from 'preact';
import type { BidResult } from '../../src/domain/bid/result.ts';
import { ButtonLink } from '../components/button.tsx';
import { EmptyState } from '../components/empty-state.tsx';
import type { Entered, FaultOf } from '../components/fault-of.ts';
import { FragmentPage, type FragmentPageProps } from '../components/fragment-page.tsx';
import { Notice } from '../components/notice.tsx';
import { Part } from '../components/part.tsx';
import { bidEntryWord } from '../words/bid-entries.ts';
import { BidFields } from './bid/bid-fields.tsx';
import { BidLines } from './bid/bid-lines.tsx';
import { FrozenBids, type FrozenBidsProps } from './bid/frozen-bids.tsx';
import { PricedTakeoff } from './bid/priced-takeoff.tsx';

export interface BidPageProps extends Omit<FragmentPageProps, 'children' | 'wordOf' | 'save'> {
  readonly currency: string;
  readonly entered: Entered;
  readonly faultOf: FaultOf;
  readonly bid: BidResult | null;
  readonly frozen: FrozenBidsProps;
}

/** The lines that make the price, what the price lacks, and what the estimator enters for it. */
export function BidPage({ currency, entered, faultOf, bid, frozen, ...form }: BidPageProps): JSX.Element {
  return (
    <>
      {bid === null ? (
        <EmptyState text="No bid yet. Enter below what the takeoff and the hours do not say; the lines follow." />
      ) : (
        <>
          <Lacking incomplete={bid.incomplete} />
          <BidLines bid={bid} currency={currency} />
        </>
      )}
      <Part title="Entered for the bid" id="entries">
        <FragmentPage {...form} wordOf={bidEntryWord} save="Save the entries">
          <BidFields entered={entered} faultOf={faultOf} currency={currency} />
        </FragmentPage>
      </Part>
      <FrozenBids {...frozen} />
      {bid !== null && bid.materials.length > 0 && <PricedTakeoff lines={bid.materials} currency={currency} />}
    </>
  );
}

function Lacking({ incomplete }: { incomplete: readonly string[] }) {
  if (incomplete.length === 0) return null;
  return (
    <Part title="The price is not complete" id="lacking">
      <Notice kind="stop" text="What is missing counts nothing below, which is not the same as costing nothing." />
      <ul>
        {incomplete.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </Part>
  );
}

/** At the head of the page. */
export function BidTools({ jobId }: { jobId: string }): JSX.Element {
  return <ButtonLink href={`/jobs/${jobId}/bid.xlsx`}>As a workbook</ButtonLink>;
}
