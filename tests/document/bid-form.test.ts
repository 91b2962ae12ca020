import { describe, expect, test } from 'vitest';
import { readBidForm } from '../../src/document/bid-form/read-bid-form.ts';
import { BID_SECTIONS, type BidSection } from '../../src/document/bid-form/sections.ts';
import { writeBidForm } from '../../src/document/bid-form/write-bid-form.ts';
import { type BidDocument, bidSchema } from '../../src/document/job-document.ts';
import { fullDocument } from './full-document.ts';

const { project, bid: full = {} } = fullDocument();
const SECTIONS = Object.keys(BID_SECTIONS) as BidSection[];

describe.each(SECTIONS)('the form "%s"', (section) => {
  test('saved untouched changes nothing of a bid with every key', () => {
    const read = readBidForm(writeBidForm(full, project, section), project, section, full);
    expect(read.faults).toEqual([]);
    expect(read.bid).toEqual(full);
  });

  test('saved empty takes its own entries away and leaves the others', () => {
    const { bid } = readBidForm({}, project, section, full);
    const own: readonly string[] = BID_SECTIONS[section].keys;
    expect(Object.keys(bid).sort()).toEqual(
      Object.keys(full)
        .filter((key) => !own.includes(key))
        .sort(),
    );
  });
});

test('the four forms hold every entry of a bid, each once', () => {
  const keys = SECTIONS.flatMap((section) => BID_SECTIONS[section].keys);
  expect([...keys].sort()).toEqual(Object.keys(bidSchema.shape).sort());
});

const read = (section: BidSection, fields: Record<string, string>, before: BidDocument = {}) =>
  readBidForm(fields, project, section, before);

describe('rows', () => {
  test('an empty row is passed over, and what is wrong is told beside the row it was typed in', () => {
    const { bid, fieldOf } = read('quotes', {
      'quotes[0].goesTo': 'materials',
      'quotes[1].goesTo': 'materials',
      'quotes[1].id': 'A',
      'quotes[1].lines[0].state': 'priced',
      'quotes[1].lines[2].item': 'lot',
      'quotes[1].lines[2].state': 'priced',
      'quotes[1].lines[2].amount': '1,250.50',
    });
    expect(bid.quotes).toEqual([
      { id: 'A', goesTo: 'materials', lines: [{ item: 'lot', state: 'priced', amount: 125_050 }] },
    ]);
    expect(fieldOf('quotes[0].supplier')).toBe('quotes[1].supplier');
    expect(fieldOf('quotes[0].lines[0].amount')).toBe('quotes[1].lines[2].amount');
    expect(fieldOf('quotes[0].lines[0].detail')).toBe('quotes[1].lines[2].detail');
  });

  test('a quote that is ticked to be taken out is gone, with its lines', () => {
    const fields = { ...writeBidForm(full, project, 'quotes'), 'quotes[0].remove': 'yes' };
    expect(read('quotes', fields, full).bid.quotes).toBeUndefined();
  });

  test('the lines of the bid that a tax is due on are ticks', () => {
    const { bid } = read('cost', { 'taxes[0].name': 'State', 'taxes[0].percent': '6', 'taxes[0].on.freight': 'yes' });
    expect(bid.taxes).toEqual([{ name: 'State', percent: 6, on: ['freight'] }]);
  });

  test('an amount that cannot be read is told beside its field, and nothing is guessed', () => {
    const { faults } = read('cost', { 'timed[0].item': 'Lift', 'timed[0].rate': '4 hundred' });
    expect(faults).toEqual([{ field: 'timed[0].rate', said: expect.stringContaining('cannot be read as an amount') }]);
  });
});

test('a kind of bond or profit without a percentage is none yet; a profit without a kind is asked about beside the kind', () => {
  const { bid, fieldOf } = read('price', { 'bond.of': 'price', 'profit.kind': '', 'profit.percent': '10' });
  expect(bid).toEqual({ profit: { percent: 10 } });
  expect(fieldOf('profit')).toBe('profit.kind');
});

test('a bond by a scale keeps its steps, and one without a rate for the rest is asked about beside that rate', () => {
  const typed = { 'bond.of': 'price', 'bond.scale[1].amount': '100,000', 'bond.scale[1].percent': '2.5' };
  const { bid, fieldOf } = read('price', typed);
  expect(bid).toEqual({ bond: { of: 'price', scale: [{ amount: 10_000_000, percent: 2.5 }] } });
  expect(fieldOf('bond.percent')).toBe('bond.percent');
  expect(fieldOf('bond.scale[0].amount')).toBe('bond.scale[1].amount');
});
