import type { JSX } from 'preact';
import type { BidSection } from '../../src/document/bid-form/sections.ts';
import type { BidResult } from '../../src/domain/bid/result.ts';
import type { Entered, FaultOf } from '../components/fault-of.ts';
import { FragmentPage, type FragmentPageProps } from '../components/fragment-page.tsx';
import { Part } from '../components/part.tsx';
import { bidEntryWord } from '../words/bid-entries.ts';
import { CostFields } from './bid/cost-fields.tsx';
import { HeldThings } from './bid/held-things.tsx';
import { LevelledQuotes } from './bid/levelled-quotes.tsx';
import { OfferFields } from './bid/offer-fields.tsx';
import { QuoteFields } from './bid/quote-fields.tsx';

export type OwnPage = Exclude<BidSection, 'price'>;

export const SECTION_WORDS: Readonly<Record<OwnPage, { readonly title: string; readonly save: string }>> = {
  cost: { title: 'Costs by time, subcontracts and taxes', save: 'Save the costs' },
  quotes: { title: 'Quotes', save: 'Save the quotes' },
  offer: { title: 'Alternates, unit prices and terms', save: 'Save what goes out' },
};

export interface BidSectionProps extends Omit<FragmentPageProps, 'children' | 'wordOf' | 'save'> {
  readonly section: OwnPage;
  readonly currency: string;
  readonly entered: Entered;
  readonly faultOf: FaultOf;
  readonly bid: BidResult | null;
}

/** One of the bid's forms on a page of its own; quotes with how they stand side by side. */
export function BidSectionPage({ section, currency, entered, faultOf, bid, ...form }: BidSectionProps): JSX.Element {
  const rows = { entered, faultOf, currency };
  return (
    <>
      {section === 'quotes' && bid !== null && bid.packages.length > 0 && (
        <Part title="Side by side" id="level">
          {bid.packages.map((one) => (
            <LevelledQuotes key={one.name} of={one} currency={currency} />
          ))}
          {bid.held.length > 0 && <HeldThings lines={bid.held} currency={currency} />}
          <p class="soft">
            Level total = quoted + plugs + what it lacks at our prices + freight that is out − tax that is in. Rows that
            a quote says nothing of are to be asked.
          </p>
        </Part>
      )}
      <FragmentPage {...form} wordOf={bidEntryWord} save={SECTION_WORDS[section].save}>
        {section === 'cost' && <CostFields {...rows} />}
        {section === 'quotes' && <QuoteFields {...rows} />}
        {section === 'offer' && <OfferFields {...rows} />}
      </FragmentPage>
    </>
  );
}
