import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import ExcelJs from 'exceljs';

export const OFFICE = ['/usr/bin/soffice', '/usr/bin/libreoffice'].find((place) => existsSync(place));

/** A workbook as LibreOffice works it, without the values that were written beside its formulas. */
export async function recalculated(bytes: Uint8Array): Promise<ExcelJs.Workbook> {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'jobbook-office-'));
  try {
    const workbook = new ExcelJs.Workbook();
    await workbook.xlsx.load(bytes as never);
    workbook.eachSheet((sheet) =>
      sheet.eachRow((row) =>
        row.eachCell((cell) => {
          if (cell.formula) cell.value = { formula: cell.formula } as never;
        }),
      ),
    );
    const file = path.join(folder, 'book.xlsx');
    writeFileSync(file, new Uint8Array(await workbook.xlsx.writeBuffer()));
    const out = path.join(folder, 'out');
    const profile = `-env:UserInstallation=file://${folder}/profile`;
    execFileSync(OFFICE ?? '', ['--headless', profile, '--convert-to', 'xlsx', '--outdir', out, file], {
      stdio: 'ignore',
    });
    const worked = new ExcelJs.Workbook();
    await worked.xlsx.readFile(path.join(out, 'book.xlsx'));
    return worked;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The value of a cell, worked if it is a formula. */
export function worth(workbook: ExcelJs.Workbook, sheet: string, row: number, column: number): unknown {
  const { value } = workbook.getWorksheet(sheet)?.getCell(row, column) ?? {};
  return typeof value === 'object' && value !== null && 'result' in value ? value.result : value;
}
