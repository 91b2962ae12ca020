import fc from 'fast-check';
import { expect, test } from 'vitest';
import { demoJob } from '../../../src/document/demo/demo-job.ts';
import type { JobDocument, RunDocument, TapDocument } from '../../../src/document/job-document.ts';
import { readRuns } from '../../../src/document/lists/read-runs.ts';
import { readTaps } from '../../../src/document/lists/read-taps.ts';
import { withRuns, withTaps } from '../../../src/document/lists/with-list.ts';
import { writeRuns } from '../../../src/document/lists/write-runs.ts';
import { writeTaps } from '../../../src/document/lists/write-taps.ts';
import { listJob } from './list-job.ts';

const emptied = (job: JobDocument): JobDocument => ({ ...job, runs: [] });
const tapless = (job: JobDocument): JobDocument => ({ ...job, runs: job.runs.map(({ taps: _taps, ...run }) => run) });

function madeOf<T>(result: { ok: true; made: readonly T[] } | { ok: false; faults: readonly unknown[] }): readonly T[] {
  expect(result).toMatchObject({ ok: true });
  return result.ok ? result.made : [];
}

test('the demo’s lists come out as they go in', () => {
  const demo = demoJob();
  const runs = madeOf(readRuns(writeRuns(demo), emptied(demo)));
  expect(writeRuns({ ...demo, runs: [...runs] })).toBe(writeRuns(demo));
  const taps = madeOf(readTaps(writeTaps(demo), tapless(demo)));
  expect(writeTaps(withTaps(tapless(demo), taps))).toBe(writeTaps(demo));
});

test('a list begins with its headings and has the line ends of a CSV file', () => {
  expect(writeRuns(listJob())).toBe(
    'run,level,area,type,side,paired run,conductor side,feed,x,y,z,heading,leg lengths,turns,rod,drop\r\n' +
      `F1-R01-A,F1,,demo-250A-3PN,,,left,end,,,,,"70'-0""",,,\r\n`,
  );
  expect(writeTaps(listJob())).toBe(
    'run,tap,at,phases,neutral,device,load VA,load A,pf,serves,pair\r\n' + `F1-R01-A,T1,"1'-9""",L1,,30,2000,,,,\r\n`,
  );
});

test('what few lists say of a tap-off has a column where some tap-off says it, and none elsewhere', () => {
  const job = listJob();
  const [run] = job.runs;
  const [first] = run!.taps!;
  const heavy = { ...first!, id: 'T2', atMm: 3048, weightKg: 4.5, dropMm: 1219.2, fixed: true };
  const written = writeTaps({ ...job, runs: [{ ...run!, taps: [first!, heavy] }] });
  expect(written.split('\r\n').slice(0, 3)).toEqual([
    'run,tap,at,phases,neutral,device,load VA,load A,pf,serves,pair,fixed,drop,weight',
    `F1-R01-A,T1,"1'-9""",L1,,30,2000,,,,,,,`,
    `F1-R01-A,T2,"10'-0""",L1,,30,2000,,,,,yes,"4'-0""",4.5 kg`,
  ]);
  const read = (cells: string) =>
    readTaps(`run,tap,at,phases,device,load VA,drop (in),weight,fixed\nF1-R01-A,T9,20 ft,L1,30,900,${cells}`, job);
  expect(madeOf(read('48,10 lb,no'))).toMatchObject([{ tap: { dropMm: 1219.2, weightKg: 4.5359237, fixed: false } }]);
  const wrong = read('soon,heavy,perhaps');
  expect(wrong.ok ? [] : wrong.faults.map(({ row, column }) => [row, column])).toEqual([
    [2, 'fixed'],
    [2, 'drop'],
    [2, 'weight'],
  ]);
});

test('a cell that a spreadsheet would run as a formula goes out guarded, and comes back as it was', () => {
  const job = listJob();
  const [run] = job.runs;
  const danger = { ...run!, id: '=cmd', area: '@sum', taps: [] };
  const written = writeRuns({ ...job, runs: [danger] });
  expect(written).toContain(`'=cmd,F1,'@sum`);
  expect(madeOf(readRuns(written, emptied(job)))).toMatchObject([{ id: '=cmd', area: '@sum' }]);
});

/** Any length that the document can keep, down to 1/80 mm. */
const eightieths = (min: number, max: number) => fc.integer({ min: min * 80, max: max * 80 }).map((u80) => u80 / 80);
const label = fc.stringMatching(/^[A-Za-z0-9][A-Za-z0-9 ,;"'.-]{0,10}[A-Za-z0-9]$/);

const run: fc.Arbitrary<RunDocument> = fc
  .record(
    {
      id: label,
      level: fc.constantFrom('F1', 'F2'),
      area: label,
      type: fc.constant('demo-250A-3PN'),
      side: fc.constantFrom('A', 'B'),
      start: fc.record({
        xMm: eightieths(-100_000, 100_000),
        yMm: eightieths(-100_000, 100_000),
        zMm: eightieths(-100_000, 100_000),
      }),
      headingDeg: fc
        .double({ min: -360, max: 360, noNaN: true, noDefaultInfinity: true })
        .map((deg) => Number(deg.toFixed(4)) + 0),
      conductorSide: fc.constantFrom('left', 'right'),
      feed: fc.constantFrom({ kind: 'end' }, { kind: 'centre' }, { kind: 'centre', atMm: 50.0125 }),
      legs: fc
        .array(
          fc.record({ lengthMm: eightieths(100, 100_000), turn: fc.constantFrom('left', 'right', 'up', 'down') }),
          {
            minLength: 1,
            maxLength: 4,
          },
        )
        .map((legs) => legs.map((leg, i) => (i === legs.length - 1 ? { ...leg, turn: 'none' } : leg))),
      dropMm: eightieths(0, 40_000),
      rod: fc.constantFrom('3/8', 'M12'),
    },
    { requiredKeys: ['id', 'level', 'type', 'conductorSide', 'feed', 'legs'] },
  )
  .map((made) => made as RunDocument);

test('any runs come out as they go in, in feet and in millimetres', () => {
  const runs = fc.uniqueArray(run, { selector: (one) => one.id, minLength: 1, maxLength: 6 });
  fc.assert(
    fc.property(runs, fc.constantFrom('ft-in' as const, 'metric' as const), (list, units) => {
      const job = emptied(listJob(units));
      expect(madeOf(readRuns(writeRuns(withRuns(job, list)), job))).toEqual(list);
    }),
  );
});

const tap: fc.Arbitrary<TapDocument> = fc
  .tuple(
    fc.record(
      {
        id: label,
        phases: fc.constantFrom('L1', 'L2-L3', 'L1-L2-L3'),
        neutral: fc.boolean(),
        deviceA: fc.integer({ min: 1, max: 400 }),
        powerFactor: fc.integer({ min: 1, max: 1000 }).map((thousandths) => thousandths / 1000),
        serves: label,
        pair: label,
        fixed: fc.boolean(),
        interruptingKA: fc.integer({ min: 1, max: 650 }).map((tenths) => tenths / 10),
        continuous: fc.boolean(),
        thirdHarmonic: fc.integer({ min: 0, max: 1000 }).map((thousandths) => thousandths / 1000),
        movablePhase: fc.boolean(),
        dropMm: eightieths(0, 10_000),
        weightKg: fc.integer({ min: 0, max: 5000 }).map((hundredths) => hundredths / 100),
      },
      { requiredKeys: ['id', 'phases', 'deviceA'] },
    ),
    fc.oneof(
      eightieths(0, 21_336).map((atMm) => ({ atMm })),
      fc.record({ xMm: eightieths(-100_000, 100_000), yMm: eightieths(-100_000, 100_000) }).map((near) => ({ near })),
    ),
    fc.oneof(
      fc.integer({ min: 50, max: 100_000 }).map((loadVA) => ({ loadVA })),
      fc.integer({ min: 0, max: 4000 }).map((tenths) => ({ loadA: tenths / 10 })),
    ),
  )
  .map(([made, place, load]) => ({ ...made, ...place, ...load }) as TapDocument);

test('any taps come out as they go in, in feet and in millimetres', () => {
  const taps = fc.uniqueArray(tap, { selector: (one) => one.id, minLength: 1, maxLength: 8 });
  fc.assert(
    fc.property(taps, fc.constantFrom('ft-in' as const, 'metric' as const), (list, units) => {
      const job = tapless(listJob(units));
      const placed = list.map((one) => ({ run: 'F1-R01-A', tap: one }));
      expect(madeOf(readTaps(writeTaps(withTaps(job, placed)), job))).toEqual(placed);
    }),
  );
});
