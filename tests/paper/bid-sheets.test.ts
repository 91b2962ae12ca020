import ExcelJs from 'exceljs';
import { describe, expect, test } from 'vitest';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import { toModel } from '../../src/document/to-model.ts';
import { figures } from '../../src/domain/figures.ts';
import { bidClientWorkbook } from '../../src/paper/workbooks/bid-client-workbook.ts';
import { bidSummaryWorkbook } from '../../src/paper/workbooks/bid-summary-workbook.ts';
import { OFFICE, recalculated, worth } from '../support/recalculated.ts';
import { scenarioT2 } from '../support/scenarios.ts';

const FRAME = { title: 'Invented job', currency: 'USD', at: new Date('2026-05-12T10:00:00Z') };

function bidOf(document: ReturnType<typeof demoJob>) {
  const { bid } = figures(toModel(document));
  if (bid === null) throw new Error('the job has a bid');
  return bid;
}

/** The worked bid with unit prices and an alternate. */
function offered() {
  const job = scenarioT2('margin');
  const unitPrices = [
    { item: 'tap', material: 45_000 },
    { item: 'section', material: 31_000 },
  ] as const;
  const alternates = [{ name: 'Stock on site early', kind: 'add', other: 1_250_000 }] as const;
  return bidOf({ ...job, bid: { ...job.bid, unitPrices: [...unitPrices], alternates: [...alternates] } });
}

async function load(bytes: Uint8Array) {
  const workbook = new ExcelJs.Workbook();
  await workbook.xlsx.load(bytes as never);
  return workbook;
}

const summary = (bid: ReturnType<typeof bidOf>) =>
  bidSummaryWorkbook({ ...FRAME, bid, lineWord: ({ line, label }) => label ?? line });
const client = (bid: ReturnType<typeof bidOf>) => bidClientWorkbook({ ...FRAME, bid, site: undefined });

test('both workbooks freeze their heads and say what to print', async () => {
  for (const bytes of [await summary(offered()), await client(offered())])
    for (const sheet of (await load(bytes)).worksheets) {
      expect(sheet.views[0], sheet.name).toMatchObject({ state: 'frozen', ySplit: 3 });
      expect(sheet.pageSetup.printArea, sheet.name).toMatch(/^A1:[A-Z]+\d+$/);
    }
});

test('the client’s workbook has price, alternates and unit prices, and no line, hour or percentage of the build-up', async () => {
  const bid = offered();
  const workbook = await load(await client(bid));
  expect(workbook.worksheets.map(({ name }) => name)).toEqual(['Bid', 'Alternates', 'Unit prices', 'Terms']);
  const cells: unknown[] = [];
  workbook.eachSheet((sheet) =>
    sheet.eachRow((row) => row.eachCell(({ value, result }) => cells.push(result ?? value))),
  );
  expect(cells).toContain(bid.price / 100);
  expect(cells).toContain((bid.unitPrices?.lines[0]?.worked ?? 0) / 100);
  expect(cells).toContain((bid.alternates[0]?.amount ?? 0) / 100);
  for (const { line, amount } of bid.lines) expect(cells, line).not.toContain(amount / 100);
  expect(cells).not.toContain(bid.cost / 100);
  expect(cells.join(' ')).not.toMatch(/overhead|profit|margin|markup|cost|labour/i);
});

test('the summary has alternates, unit prices and terms behind it, and a line for each who signs, within what is printed', async () => {
  const workbook = await load(await summary(offered()));
  expect(workbook.worksheets.map(({ name }) => name)).toEqual(['Summary', 'Alternates', 'Unit prices', 'Terms']);
  const sheet = workbook.getWorksheet('Summary')!;
  const signed = ['Estimated by, date', 'Checked by, date', 'Released to the client by, date'];
  const last = [2, 1, 0].map((back) => sheet.getRow(sheet.rowCount - back));
  expect(last.map((row) => row.getCell(1).value)).toEqual(signed);
  for (const row of last) expect(String(row.getCell(4).value)).toMatch(/^_{20,}$/);
  expect(sheet.pageSetup.printArea).toBe(`A1:D${sheet.rowCount}`);
  const bid = (await load(await client(offered()))).getWorksheet('Bid')!;
  expect(bid.getRow(bid.rowCount).getCell(1).value).toBe('For the client: name, signature, date');
});

test('a long title stands over the columns in as many lines as it takes, and makes no print smaller', async () => {
  const long = `Invented job ${'with a long name '.repeat(12)}`;
  const bytes = await bidClientWorkbook({ ...FRAME, title: long, bid: offered(), site: undefined });
  for (const sheet of (await load(bytes)).worksheets) {
    const title = sheet.getCell('A1');
    expect(String(title.value), sheet.name).toContain(long);
    expect(title.alignment.wrapText).toBe(true);
    const last = sheet.pageSetup.printArea?.match(/:([A-Z]+)/)?.[1];
    expect(sheet.getCell(`${last}1`).master.address).toBe('A1');
    const letters = sheet.columns.reduce((sum, { width = 0 }) => sum + width, 0);
    expect(sheet.getRow(1).height).toBeGreaterThanOrEqual(15 * Math.ceil(long.length / letters));
  }
});

test('the caution on the client’s sheet breaks within its column, and so is inside what is printed', async () => {
  const workbook = await load(await client(offered()));
  const cell = workbook.getWorksheet('Bid')?.getCell('C5');
  expect(String(cell?.value)).toContain('nothing in this bid permits anybody to energise anything');
  expect(cell?.alignment).toMatchObject({ wrapText: true });
  // 165 letters in a column of 56 are three lines of 15 points.
  expect(String(cell?.value)).toHaveLength(165);
  expect(workbook.getWorksheet('Bid')?.getRow(5).height).toBe(45);
  expect(workbook.getWorksheet('Bid')?.getRow(4).height).toBeUndefined();
});

test('a price that is not complete is told on both, and the client’s is a draft', async () => {
  const { materials: _none, ...rest } = scenarioT2().bid ?? {};
  const types = scenarioT2().buswayTypes.map(({ prices: _gone, ...type }) => type);
  const bid = bidOf({ ...scenarioT2(), buswayTypes: types, bid: rest });
  expect(String((await load(await summary(bid))).worksheets[0]?.getCell('A1').value)).toContain('NOT COMPLETE');
  expect(String((await load(await client(bid))).worksheets[0]?.getCell('A1').value)).toContain('do not sign');
});

describe.skipIf(OFFICE === undefined)('recalculated by LibreOffice, which did not write it', () => {
  test.each([
    ['the demo', () => bidOf(demoJob())],
    ['the worked bid', offered],
  ])('the summary of %s comes to its cost, price, markup and margin', { timeout: 120_000 }, async (_, make) => {
    const bid = make();
    const worked = await recalculated(await summary(bid));
    const found = new Map(
      Array.from({ length: bid.lines.length + 4 }, (_row, index) => {
        const at = (column: number) => worth(worked, 'Summary', 4 + index, column);
        return [String(at(1)), [at(2), at(3)]] as const;
      }),
    );
    expect(found.get('Cost')?.[0]).toBeCloseTo(bid.cost / 100, 6);
    expect(found.get('Price')?.[0]).toBeCloseTo(bid.price / 100, 6);
    const profit = bid.lines.find(({ line }) => line === 'profit')!;
    const markup = (100 * profit.amount) / (bid.price - profit.amount);
    expect(found.get('Profit as markup on cost')?.[1]).toBeCloseTo(markup, 6);
    expect(found.get('The same as margin of the price')?.[1]).toBeCloseTo((100 * profit.amount) / bid.price, 6);
  });

  test('the client’s unit prices extend to what the build-up has', { timeout: 120_000 }, async () => {
    const bid = offered();
    const worked = await recalculated(await client(bid));
    bid.unitPrices?.lines.forEach(({ extended }, index) => {
      expect(extended).toBeGreaterThan(0);
      expect(worth(worked, 'Unit prices', 4 + index, 5)).toBeCloseTo((extended ?? 0) / 100, 6);
    });
    expect(worth(worked, 'Bid', 4, 2)).toBeCloseTo(bid.price / 100, 6);
  });
});
