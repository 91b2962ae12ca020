import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import ExcelJs from 'exceljs';
import { describe, expect, test } from 'vitest';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import { toModel } from '../../src/document/to-model.ts';
import { figures } from '../../src/domain/figures.ts';
import { hoursByLevel } from '../../src/domain/labour/hours-by-level.ts';
import { bidWorkbook } from '../../src/paper/workbooks/bid-workbook.ts';
import { letter } from '../../src/paper/workbooks/table-sheet.ts';
import { scenarioT2 } from '../support/scenarios.ts';

/** The demo's bid with every kind of line that a bid can have. */
function everyLine(): ReturnType<typeof demoJob> {
  const job = demoJob();
  const { taxPercent: _plain, ...bid } = job.bid ?? {};
  const spares = [
    { item: 'tap' as const, percent: 2, minimum: 3 },
    { item: 'support' as const, percent: 5, ownerSpares: 6 },
  ];
  return {
    ...job,
    project: { ...job.project, ordering: { spares } },
    bid: {
      ...bid,
      wastePercent: 1.5,
      escalationPercent: 2.25,
      consumablesPercent: 2,
      bond: {
        percent: 1.2,
        of: 'price',
        scale: [
          { amount: 10_000_000, percent: 2.5 },
          { amount: 15_000_000, percent: 1.5 },
        ],
      },
      profit: { kind: 'markup', percent: 8 },
      quotes: [
        ...(bid.quotes ?? []),
        {
          ...{ id: 'H', package: 'Hangers', supplier: 'Invented', chosen: true, freight: 'in', tax: 'out' },
          lines: [
            { item: 'support', state: 'priced', amount: 1_234_567 },
            { item: 'tap', state: 'lacks' },
          ],
        },
      ],
      taxes: [
        { name: 'State', percent: 6.25, on: ['materials', 'freight'] },
        { name: 'County', percent: 1, on: ['equipment', 'subcontracts'] },
      ],
      unitPrices: [{ item: 'tap' }, { item: 'section' }, { item: 'drop', offered: 33_300 }],
    },
  };
}

async function bookOf(document: ReturnType<typeof demoJob>) {
  const job = toModel(document);
  const { bid, labour } = figures(job);
  if (bid === null || labour === null) throw new Error('the job has a bid and hours');
  const levels = job.levels.map(({ id }) => id);
  const bytes = await bidWorkbook({
    title: 'Invented job, design 3',
    currency: 'USD',
    at: new Date('2026-05-12T10:00:00Z'),
    bid,
    lineWord: ({ line, label }) => label ?? line,
    hours: { levels, rows: hoursByLevel(labour, levels) },
  });
  return { bytes, bid, labour };
}

test.each([
  ['the demo', demoJob()],
  ['the worked bid', scenarioT2('margin')],
  ['a bid of every line', everyLine()],
])('the workbook of %s holds figures and formulas, heads frozen, print areas set', async (_, document) => {
  const { bytes, bid } = await bookOf(document);
  const workbook = new ExcelJs.Workbook();
  await workbook.xlsx.load(bytes as never);
  const price = workbook.getWorksheet('Price');
  if (price === undefined) throw new Error('there is a sheet of the price');
  expect(price.views[0]).toMatchObject({ state: 'frozen', ySplit: 3 });
  for (const sheet of workbook.worksheets) {
    expect(sheet.pageSetup.printArea, sheet.name).toMatch(/^A1:[A-Z]+\d+$/);
    expect(sheet.pageSetup.printTitlesRow).toBe('3:3');
  }
  const foot = price.getCell(4 + bid.lines.length, 5).value;
  expect(foot).toMatchObject({ formula: `SUM(E4:E${3 + bid.lines.length})`, result: bid.price / 100 });
  bid.lines.forEach(({ amount }, index) => {
    expect(price.getCell(4 + index, 5).value).toMatchObject({ result: amount / 100 });
  });
});

const OFFICE = ['/usr/bin/soffice', '/usr/bin/libreoffice'].find((place) => existsSync(place));
if (OFFICE === undefined)
  process.stdout.write(
    'No LibreOffice was found, so workbooks are NOT recalculated here. Debian: apt-get install libreoffice-calc.\n',
  );

describe.skipIf(OFFICE === undefined)('recalculated by LibreOffice, which did not write it', () => {
  test.each([
    ['the demo', demoJob()],
    ['the worked bid', scenarioT2('margin')],
    ['a bid of every line', everyLine()],
  ])('%s comes to the same lines, price and hours', { timeout: 120_000 }, async (_, document) => {
    const { bytes, bid, labour } = await bookOf(document);
    const folder = mkdtempSync(path.join(os.tmpdir(), 'jobbook-office-'));
    try {
      // Without the values that were written beside the formulas: what comes back was worked by the other program.
      const workbook = new ExcelJs.Workbook();
      await workbook.xlsx.load(bytes as never);
      workbook.eachSheet((sheet) =>
        sheet.eachRow((row) =>
          row.eachCell((cell) => {
            if (cell.formula) cell.value = { formula: cell.formula } as never;
          }),
        ),
      );
      writeFileSync(path.join(folder, 'bid.xlsx'), new Uint8Array(await workbook.xlsx.writeBuffer()));
      execFileSync(
        OFFICE ?? '',
        [
          '--headless',
          `-env:UserInstallation=file://${folder}/profile`,
          '--convert-to',
          'xlsx',
          '--outdir',
          path.join(folder, 'out'),
          path.join(folder, 'bid.xlsx'),
        ],
        { stdio: 'ignore' },
      );
      const worked = new ExcelJs.Workbook();
      await worked.xlsx.readFile(path.join(folder, 'out', 'bid.xlsx'));
      const figure = (sheet: string, row: number, column: number) => {
        const { value } = worked.getWorksheet(sheet)?.getCell(row, column) ?? {};
        return typeof value === 'object' && value !== null && 'result' in value ? value.result : value;
      };
      bid.lines.forEach(({ line, amount }, index) => {
        expect(figure('Price', 4 + index, 5), line).toBeCloseTo(amount / 100, 6);
      });
      expect(figure('Price', 4 + bid.lines.length, 5)).toBeCloseTo(bid.price / 100, 6);
      const rows = (sheet: string) => worked.getWorksheet(sheet)?.rowCount ?? 0;
      const totals = (sheet: string, column: number, isTotal: (head: unknown) => boolean, value: number) =>
        Array.from({ length: rows(sheet) }, (_, row) => row + 1)
          .filter((row) => isTotal(figure(sheet, row, column)))
          .map((row) => figure(sheet, row, value));
      const major = (minor: number | null) => (minor === null ? null : expect.closeTo(minor / 100, 6));
      expect(totals('Quotes', 4, (head) => head === 'LEVELLED', 6)).toEqual(
        bid.packages.flatMap(({ quotes }) => quotes.map(({ total }) => major(total))),
      );
      expect(totals('Alternates', 1, (head) => head === 'ADDS' || head === 'DEDUCTS', 5)).toEqual(
        bid.alternates.map(({ amount }) => major(amount)),
      );
      const { lines: units = [], remainder = 0 } = bid.unitPrices ?? {};
      units.forEach(({ worked: price, offered, extended }, index) => {
        expect(figure('Unit prices', 4 + index, 6)).toEqual(major(offered ?? price));
        expect(figure('Unit prices', 4 + index, 8)).toEqual(major(extended));
      });
      if (units.length > 0) expect(figure('Unit prices', 4 + units.length, 8)).toEqual(major(remainder));
      const hours = worked.getWorksheet('Hours');
      expect(figure('Hours', hours?.rowCount ?? 0, hours?.columnCount ?? 0)).toBeCloseTo(labour.range.likely, 6);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });
});

test('columns after Z go on with AA', () => {
  expect([1, 26, 27, 52, 53].map(letter)).toEqual(['A', 'Z', 'AA', 'AZ', 'BA']);
});
