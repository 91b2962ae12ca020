import type { JSX } from 'preact';
import type { BidDocument } from '../../src/document/job-document.ts';
import type { BidResult } from '../../src/domain/bid/result.ts';
import type { UnitSystem } from '../../src/domain/model.ts';
import { ButtonLink } from '../components/button.tsx';
import { EmptyState } from '../components/empty-state.tsx';
import type { Entered, FaultOf } from '../components/fault-of.ts';
import { FindingList } from '../components/finding-list.tsx';
import { FragmentPage, type FragmentPageProps } from '../components/fragment-page.tsx';
import { InventedNotice } from '../components/invented-notice.tsx';
import { Notice } from '../components/notice.tsx';
import { Part } from '../components/part.tsx';
import { bidEntryWord } from '../words/bid-entries.ts';
import { BidFields } from './bid/bid-fields.tsx';
import { BidLines } from './bid/bid-lines.tsx';
import { EntryLinks } from './bid/entry-links.tsx';
import { FrozenBids, type FrozenBidsProps } from './bid/frozen-bids.tsx';
import { HeldThings } from './bid/held-things.tsx';
import { LevelledQuotes } from './bid/levelled-quotes.tsx';
import { Offered } from './bid/offered.tsx';
import { PricedThings } from './bid/priced-things.tsx';

export interface BidPageProps extends Omit<FragmentPageProps, 'children' | 'wordOf' | 'save'> {
  readonly jobId: string;
  readonly currency: string;
  readonly units: UnitSystem;
  readonly entered: Entered;
  readonly faultOf: FaultOf;
  readonly entries: BidDocument;
  readonly bid: BidResult | null;
  readonly labourBook: string | null;
  readonly frozen: FrozenBidsProps;
}

/** The lines that make the price, what the price lacks, what goes out with it, and what the estimator enters for it. */
export function BidPage(props: BidPageProps): JSX.Element {
  const { jobId, currency, units, entered, faultOf, entries, bid, labourBook, frozen, ...form } = props;
  // Who is sent back to the form wants it before the price that it did not change.
  const isSentBack = form.conflicts !== null || form.summary.length > 0;
  const enteredPart = (
    <Part title="Entered for the bid" id="entries">
      <EntryLinks jobId={jobId} entries={entries} />
      <FragmentPage {...form} wordOf={bidEntryWord} save="Save the entries">
        <BidFields entered={entered} faultOf={faultOf} currency={currency} />
      </FragmentPage>
    </Part>
  );
  return (
    <>
      {isSentBack && enteredPart}
      {bid === null ? (
        <EmptyState text="No bid yet. Enter below what the takeoff and the hours do not say; the lines follow." />
      ) : (
        <>
          <InventedNotice version={labourBook} />
          <Lacking incomplete={bid.incomplete} />
          <BidLines bid={bid} currency={currency} />
          <SecondLook bid={bid} units={units} />
          <Offered bid={bid} currency={currency} />
        </>
      )}
      {!isSentBack && enteredPart}
      <FrozenBids {...frozen} />
      {bid !== null && bid.packages.length > 0 && (
        <Part title="Quotes" id="quotes">
          {bid.packages.map((one) => (
            <LevelledQuotes key={one.name} of={one} currency={currency} />
          ))}
          {bid.held.length > 0 && <HeldThings lines={bid.held} currency={currency} />}
        </Part>
      )}
      {bid !== null && bid.materials.length > 0 && (
        <PricedThings
          title="Material at the prices of its types"
          caption="Priced takeoff"
          id="materials"
          lines={bid.materials}
          currency={currency}
        />
      )}
      {bid !== null && bid.spares.length > 0 && (
        <PricedThings
          title="Spares at the prices of their types"
          caption="By the rules for ordering: spares, those for the owner, waste"
          id="spares"
          lines={bid.spares}
          currency={currency}
        />
      )}
    </>
  );
}

export function Lacking({ incomplete }: { incomplete: readonly string[] }): JSX.Element | null {
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

function SecondLook({ bid, units }: { bid: BidResult; units: UnitSystem }) {
  if (bid.checks.length === 0) return null;
  return (
    <Part title="Worth a second look" id="checks">
      <FindingList findings={bid.checks} units={units} />
    </Part>
  );
}

/** At the head of the page. */
export function BidTools({ jobId }: { jobId: string }): JSX.Element {
  const job = `/jobs/${jobId}`;
  return (
    <>
      <ButtonLink href={`${job}/bid-summary.pdf`}>Summary, PDF</ButtonLink>
      <ButtonLink href={`${job}/bid-build-up.pdf`}>Build-up, PDF</ButtonLink>
      <ButtonLink href={`${job}/bid-client.pdf`}>For the client, PDF</ButtonLink>
      <ButtonLink href={`${job}/bid-summary.xlsx`}>Summary, workbook</ButtonLink>
      <ButtonLink href={`${job}/bid.xlsx`}>Build-up, workbook</ButtonLink>
      <ButtonLink href={`${job}/bid-client.xlsx`}>For the client, workbook</ButtonLink>
    </>
  );
}
