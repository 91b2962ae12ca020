import { expect, it } from 'vitest';
import { readTapSheet, writeTapSheet } from '../../src/document/run-form/tap-sheet.ts';
import { listJob } from './lists/list-job.ts';

const job = listJob();
const [plain] = job.runs;
const run = {
  ...plain!,
  taps: [{ ...plain!.taps![0]!, weightKg: 4, dropMm: 1219.2 }],
};
const read = (sheet: string) => {
  const taps = readTapSheet(sheet, job, run, run.taps);
  return taps.ok ? taps.taps : taps.faults;
};

it('a run’s tap-offs go into their sheet with weight and drop, and come back the same', () => {
  const sheet = writeTapSheet(run, 'ft-in');
  expect(sheet.split('\n')[0]).toMatch(/\bdrop\tweight$/);
  expect(read(sheet)).toEqual(run.taps);
});

it('an emptied cell takes the entry away; a sheet without the column leaves it as it was', () => {
  const rows = writeTapSheet(run, 'ft-in').split('\n');
  const emptied = rows.map((row, index) => (index === 0 ? row : row.replace(/4 kg$/, ''))).join('\n');
  expect(read(emptied)).toEqual([{ ...plain!.taps![0], dropMm: 1219.2 }]);
  expect(read('tap\tat\tphases\tdevice\tload VA\nT1\t2 ft\tL2\t30\t1500')).toEqual([
    { id: 'T1', atMm: 609.6, phases: 'L2', deviceA: 30, loadVA: 1500, weightKg: 4, dropMm: 1219.2 },
  ]);
});
