import ExcelJs from 'exceljs';
import type { BidResult } from '../../domain/bid/result.ts';
import { type Frame, majorOf, moneyFormat } from './bid/frame.ts';
import { offerSheets } from './bid/offer-sheets.ts';
import { signatureRows } from './bid/signature-rows.ts';
import { termsSheet } from './bid/terms-sheet.ts';
import { addTable, type TableSheet } from './table-sheet.ts';

export interface BidClientWorkbook extends Frame {
  readonly at: Date;
  readonly bid: BidResult;
  readonly site: string | undefined;
}

/** The client's version of a bid as a workbook (XLSX): price, alternates, unit prices, terms, and not one cost. */
export async function bidClientWorkbook(input: BidClientWorkbook): Promise<Uint8Array> {
  const workbook = new ExcelJs.Workbook();
  workbook.created = input.at;
  workbook.modified = input.at;
  const { bid } = input;
  addTable(workbook, priceSheet(input));
  for (const sheet of [...offerSheets(input, bid), termsSheet(input, bid)]) addTable(workbook, sheet);
  return new Uint8Array(await workbook.xlsx.writeBuffer());
}

function priceSheet(input: BidClientWorkbook): TableSheet {
  const { bid, title, currency, site } = input;
  const isWhole = bid.incomplete.length === 0;
  return {
    name: 'Bid',
    title: isWhole ? title : `${title} – A DRAFT: the price is not complete, do not sign`,
    columns: [
      { head: 'What', width: 36 },
      { head: `Amount, ${currency}`, width: 20, format: moneyFormat(input) },
      { head: 'Note', width: 56, wraps: true },
    ],
    rows: [
      ['Price', majorOf(input)(bid.price), isWhole ? null : 'not complete: do not sign'],
      ...(site === undefined ? [] : [['Place of the work', null, site]]),
      [
        'Caution',
        null,
        'The work is done to the sheets of the busway’s maker, the local codes and the judgement of licensed people; nothing in this bid permits anybody to energise anything.',
      ],
      ...signatureRows(['For the bidder: name, signature, date', 'For the client: name, signature, date'], 3),
    ],
  };
}
