import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import ExcelJs from 'exceljs';
import { describe, expect, test } from 'vitest';
import { sparesOf } from '../../src/domain/ordering/spares.ts';
import type { SpareRow } from '../../src/paper/workbooks/order-sheets.ts';
import { takeoffWorkbook } from '../../src/paper/workbooks/takeoff-workbook.ts';
import { aSpareRule } from '../support/ordering.ts';

/** Worked by hand: percentages of what is taken in, rounded up to pieces, metres to millimetres. */
const BY_HAND: readonly Omit<SpareRow, 'type' | 'length'>[] = [
  {
    thing: 'clamp',
    unit: 'each',
    needed: 384,
    wastePercent: 0,
    waste: 0,
    percent: 5,
    minimum: 10,
    spare: 20,
    owner: 2,
  },
  {
    thing: 'end-cap',
    unit: 'each',
    needed: 48,
    wastePercent: 10,
    waste: 5,
    percent: 5,
    minimum: 10,
    spare: 10,
    owner: 0,
  },
  {
    thing: 'label',
    unit: 'each',
    needed: 300,
    wastePercent: 7,
    waste: 21,
    percent: 0.5,
    minimum: 0,
    spare: 2,
    owner: 0,
  },
  {
    thing: 'slot-closure',
    unit: 'm',
    needed: 730.6087,
    wastePercent: 5,
    waste: 36.531,
    percent: 0,
    minimum: 0,
    spare: 0,
    owner: 0,
  },
];

const rows: readonly SpareRow[] = BY_HAND.map((row) => ({ ...row, type: '', length: '' }));

function book(marks = 'R: P01'): Promise<Uint8Array> {
  const listed = {
    level: 'F1',
    order: 1,
    needed: '2026-05-04',
    orderBy: '',
    purpose: 'the work',
    thing: '=1+1',
    type: '',
    length: '',
    lengthMm: null,
    quantity: 4,
    unit: 'each',
    marks,
  };
  return takeoffWorkbook({
    title: 'Invented job, design 3',
    at: new Date('2026-05-12T10:00:00Z'),
    job: [],
    byLevel: [],
    counted: [],
    list: [listed],
    spares: rows,
    tools: [
      { tool: 'Torque wrench', perCrew: 2, crews: 3, which: 'make up joints', note: '' },
      { tool: 'Lift', perCrew: 1, crews: null, which: 'every crew', note: '' },
    ],
  });
}

test.each(BY_HAND)('the domain works the spares of $thing as they were worked by hand', (row) => {
  const { needed, unit, wastePercent, percent, minimum, owner } = row;
  const item = row.thing as 'clamp';
  const thing = {
    item,
    kind: null,
    hand: null,
    length: null,
    type: null,
    level: 'F1',
    unit,
    quantity: needed,
    parts: [],
  };
  const rule = aSpareRule(item, { wastePercent, percent, minimum, ownerSpares: owner });
  expect(sparesOf([thing], [rule]).lines).toMatchObject([{ waste: row.waste, spare: row.spare, owner }]);
});

test('heads are frozen, print areas set, text that looks like a formula stays text, and a cell is never overfull', async () => {
  const workbook = new ExcelJs.Workbook();
  await workbook.xlsx.load((await book('F1-R01-A: P01; '.repeat(4_000))) as never);
  for (const sheet of workbook.worksheets) {
    expect(sheet.views[0], sheet.name).toMatchObject({ state: 'frozen', ySplit: 3 });
    expect(sheet.pageSetup.printArea, sheet.name).toMatch(/^A1:[A-Z]+\d+$/);
  }
  const list = workbook.getWorksheet('Order list');
  expect(list?.getCell('F4').value).toBe('=1+1');
  const marks = String(list?.getCell('L4').value);
  expect(marks.length).toBeLessThan(32_767); // the most that a cell of the format takes
  expect(marks).toContain('the rest is in the CSV');
});

const OFFICE = ['/usr/bin/soffice', '/usr/bin/libreoffice'].find((place) => existsSync(place));
if (OFFICE === undefined)
  process.stdout.write(
    'No LibreOffice was found, so workbooks are NOT recalculated here. Debian: apt-get install libreoffice-calc.\n',
  );

describe.skipIf(OFFICE === undefined)('recalculated by LibreOffice, which did not write it', () => {
  test('spares and tools come to what was worked by hand', { timeout: 120_000 }, async () => {
    const folder = mkdtempSync(path.join(os.tmpdir(), 'jobbook-office-'));
    try {
      // Without the values that were written beside the formulas: what comes back was worked by the other program.
      const workbook = new ExcelJs.Workbook();
      await workbook.xlsx.load((await book()) as never);
      workbook.eachSheet((sheet) =>
        sheet.eachRow((row) =>
          row.eachCell((cell) => {
            if (cell.formula) cell.value = { formula: cell.formula } as never;
          }),
        ),
      );
      const file = path.join(folder, 'takeoff.xlsx');
      writeFileSync(file, new Uint8Array(await workbook.xlsx.writeBuffer()));
      const out = path.join(folder, 'out');
      const profile = `-env:UserInstallation=file://${folder}/profile`;
      execFileSync(OFFICE ?? '', ['--headless', profile, '--convert-to', 'xlsx', '--outdir', out, file], {
        stdio: 'ignore',
      });
      const worked = new ExcelJs.Workbook();
      await worked.xlsx.readFile(path.join(out, 'takeoff.xlsx'));
      const figure = (sheet: string, cell: string) => {
        const { value } = worked.getWorksheet(sheet)?.getCell(cell) ?? {};
        return typeof value === 'object' && value !== null ? ('result' in value ? value.result : 0) : value;
      };
      rows.forEach(({ thing, needed, waste, spare, owner }, index) => {
        expect(figure('Spares', `F${4 + index}`) ?? 0, `waste of ${thing}`).toBeCloseTo(waste, 9);
        expect(figure('Spares', `I${4 + index}`) ?? 0, `spares of ${thing}`).toBeCloseTo(spare, 9);
        expect(figure('Spares', `K${4 + index}`), thing).toBeCloseTo(needed + waste + spare + owner, 9);
      });
      expect(figure('Tools', 'D4')).toBe(6);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });
});
