import { parse } from 'csv-parse/sync';
import ExcelJs from 'exceljs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { demoJob } from '../../../src/document/demo/demo-job.ts';
import type { JobDocument, LabourBookDocument } from '../../../src/document/job-document.ts';
import { bookChanges } from '../../../src/document/labour-book-sheet/book-changes.ts';
import { readBookSheet } from '../../../src/document/labour-book-sheet/read-book-sheet.ts';
import { readBookWorkbook } from '../../../src/document/labour-book-sheet/read-book-workbook.ts';
import { writeBookSheet } from '../../../src/document/labour-book-sheet/write-book-sheet.ts';
import { ACTIVITIES } from '../../../src/domain/labour/result.ts';

const job = demoJob();
const book = job.labourBook!;
const sheet = writeBookSheet(book, job.project);
const read = (text: string, of: JobDocument = job) => readBookSheet(text, of);
const faultsOf = (text: string) => {
  const answer = read(text);
  return answer.ok ? [] : answer.faults;
};
/** The sheet with one line of it changed. */
const edited = (line: RegExp, into: string) => {
  expect(sheet).toMatch(line);
  return sheet.replace(line, into);
};
const rowOf = (start: string) => sheet.split('\r\n').findIndex((line) => line.startsWith(start)) + 1;

test('the demo’s book goes out and comes back the same', () => {
  expect(read(sheet)).toEqual({ ok: true, book, questions: [] });
});

test('hours by rated current, and by length within one, go out as rows of their own and come back the same', () => {
  const { section, joint } = book.activities;
  const hours = { low: 0.4, likely: 0.5, high: 0.8 };
  const rated: LabourBookDocument = {
    ...book,
    activities: {
      ...book.activities,
      joint: {
        ...joint!,
        bands: [
          { upToA: 250, ...hours },
          { upToA: 800, ...hours, high: 1.2 },
        ],
      },
      section: {
        ...section!,
        bands: [
          { upToA: 250, upToMm: 3048, ...hours },
          { upToA: 250, ...hours },
        ],
      },
    },
  };
  const out = writeBookSheet(rated, job.project);
  expect(out).toMatch(/by rating,joint,,,0\.4,0\.5,0\.8,,,,,,,250\r\n/);
  expect(out).toMatch(/by rating,section,"10'-0""",,0\.4,0\.5,0\.8,,,,,,,250\r\n/);
  expect(read(out)).toEqual({ ok: true, book: rated, questions: [] });
  expect(bookChanges(book, rated, job.project).filter(({ name }) => name === 'joint')).toEqual(
    ['250 A', '800 A'].flatMap((length) =>
      ['low', 'likely', 'high'].map((column) => expect.objectContaining({ part: 'by rating', length, column })),
    ),
  );
  const wrong = (row: string) => {
    const answer = read(`${out}${row}\r\n`);
    return answer.ok ? [] : answer.faults.map(({ column, problem }) => `${column}: ${problem}`);
  };
  expect(wrong('by rating,joint,,,1,1,1,,,,,,,much')[0]).toMatch(/^rating: /);
  expect(wrong('by rating,joint,,,1,1,1,,,,,,,250')[0]).toMatch(/^rating: 250 A stands here twice/);
  expect(wrong('by length,joint,5 ft,,1,1,1,,,,,,,')[0]).toMatch(/^rating: Band 3 of "joint" has no rated current/);
  expect(wrong('by length,tap,5 ft,,1,1,1,,,,,,,250')[0]).toMatch(/^rating: A row of by length has no rating/);
});

test.each([
  ['60%', '"60%" is a percentage, and hours are wanted.', 'such as 0.6'],
  ['1:30', '"1:30" is hours and minutes.', 'as a decimal: 1.5'],
  ['0:05', '"0:05" is hours and minutes.', 'as a decimal: 0.0833'],
])('hours written as %s are asked for as hours', (typed, problem, remedy) => {
  const [fault] = faultsOf(edited(/(activity,joint,,each,)0\.51/, `$1${typed}`));
  expect(fault).toMatchObject({ row: rowOf('activity,joint'), column: 'low', problem });
  expect(fault?.remedy).toContain(remedy);
});

test('a workbook’s cell that is shown as 15 % is 15 %, and a merged one speaks once', async () => {
  const workbook = new ExcelJs.Workbook();
  const out = workbook.addWorksheet('book');
  for (const row of sheet.trimEnd().split('\r\n')) out.addRow(parse(row)[0]);
  const at = rowOf('job condition') || out.rowCount + 1;
  const own = out.getRow(at);
  own.values = ['job condition', 'night shift', '', '', '', '', '', '', 0.15];
  own.getCell(9).numFmt = '0 %';
  out.mergeCells(at, 10, at, 12);
  const bytes = new Uint8Array(await workbook.xlsx.writeBuffer());
  const text = await readBookWorkbook(bytes);
  const answer = text.ok ? read(text.text) : text;
  expect(answer).toMatchObject({ ok: true, book: { jobConditions: [{ name: 'night shift', percent: 15 }] } });
});

test('in a metric job the lengths are millimetres, and come back the same', () => {
  const metric = { ...job, project: { ...job.project, units: 'metric' as const } };
  const text = writeBookSheet(book, metric.project);
  expect(text).toContain('by length,section,1524 mm,');
  expect(read(text, metric)).toEqual({ ok: true, book, questions: [] });
});

const hours = fc
  .tuple(fc.integer({ min: 1, max: 9_999 }), fc.integer({ min: 0, max: 9_999 }), fc.integer({ min: 0, max: 9_999 }))
  .map(([low, more, most]) => ({ low: low / 1000, likely: (low + more) / 1000, high: (low + more + most) / 1000 }));
const percent = fc.double({ min: 0, max: 1_000, noNaN: true }).map((value) => value + 0);
const factors = fc.uniqueArray(fc.constantFrom('height', 'congestion', 'storey', 'live' as const));
const mm = fc.integer({ min: 1, max: 80_000_000 }).map((u80) => u80 / 80);
// One line of text as the schema has it; what begins with a mark of quotation and a sign is how sheets guard a cell.
const words = fc
  .string({
    unit: fc.oneof(
      fc.constantFrom('=', '+', '-', '@', '"', "'", ',', ';', '＝', ' '),
      fc.string({ unit: 'grapheme', minLength: 1, maxLength: 1 }),
    ),
    minLength: 1,
    maxLength: 12,
  })
  .filter((text) => text === text.trim() && !/^(['#]|\p{Cf})/u.test(text) && !/[\p{Cc}\p{Cs}]/u.test(text));
const activity = fc.record(
  {
    unit: fc.constantFrom('each', '100 ft', '10 m', '=1+1'),
    points: hours,
    bands: fc.array(hours, { minLength: 1, maxLength: 3 }),
    factors,
  },
  { requiredKeys: ['unit', 'points'] },
);
const books: fc.Arbitrary<LabourBookDocument> = fc
  .record({
    version: words,
    policy: fc.constantFrom('add' as const, 'compound' as const),
    activities: fc.dictionary(fc.constantFrom(...ACTIVITIES), activity, { maxKeys: 6 }),
    heights: fc.uniqueArray(mm, { maxLength: 3 }),
    rest: fc.record(
      {
        storeyPercentEach: percent,
        livePercent: percent,
        congestion: fc.record({ open: percent, normal: percent, tight: percent }),
      },
      { requiredKeys: [] },
    ),
    others: fc.record(
      {
        learning: fc.record(
          {
            rate: fc.double({ min: 0.5, max: 1, noNaN: true }),
            referenceRepeat: fc.integer({ min: 1, max: 100 }),
            over: fc.constantFrom('run' as const, 'level' as const),
            activities: fc.uniqueArray(fc.constantFrom(...ACTIVITIES), { maxLength: 4 }),
          },
          { requiredKeys: ['rate', 'referenceRepeat', 'over'] },
        ),
        jobConditions: fc.uniqueArray(
          fc.record(
            {
              name: words.filter((word) => !['height', 'congestion', 'storey', 'live'].includes(word)),
              percent: fc.double({ min: -90, max: 1_000, noNaN: true }).map((value) => value + 0),
              activities: fc.uniqueArray(fc.constantFrom(...ACTIVITIES), { maxLength: 4 }),
            },
            { requiredKeys: ['name', 'percent'] },
          ),
          { minLength: 1, maxLength: 3, selector: ({ name }) => name },
        ),
        nonProductivePercent: fc.double({ min: 0, max: 100, noNaN: true }).map((value) => value + 0),
        crew: fc.array(
          fc.record(
            {
              role: words,
              number: fc.integer({ min: 1, max: 40 }),
              ratePerHour: fc.integer({ min: 0, max: 10 ** 9 }),
              effectiveness: fc.double({ min: 0.01, max: 2, noNaN: true }),
              burdenPercent: fc.double({ min: 0, max: 500, noNaN: true }).map((value) => value + 0),
            },
            { requiredKeys: ['role', 'number', 'ratePerHour', 'effectiveness'] },
          ),
          { minLength: 1, maxLength: 4 },
        ),
        overtime: fc.record(
          {
            hoursPerWeek: fc.integer({ min: 1, max: 168 }),
            straightHours: fc.integer({ min: 1, max: 168 }),
            premium: fc.double({ min: 1, max: 5, noNaN: true }),
            productivity: fc.double({ min: 0.01, max: 1, noNaN: true }),
          },
          { requiredKeys: ['hoursPerWeek'] },
        ),
        correlation: fc.double({ min: 0, max: 1, noNaN: true }).map((value) => value + 0),
        trials: fc.integer({ min: 1, max: 1_000_000 }),
        seed: fc.integer({ min: -(2 ** 31), max: 2 ** 31 - 1 }),
      },
      { requiredKeys: [] },
    ),
  })
  .map(({ version, policy, activities, heights, rest, others }) => ({
    version,
    policy,
    activities: Object.fromEntries(
      Object.entries(activities).map(([id, { unit, points, bands, factors: named }]) => [
        id,
        {
          unit,
          ...points,
          ...(bands === undefined ? {} : { bands: bands.map((band, i) => ({ upToMm: 1000 + i / 80, ...band })) }),
          ...(named === undefined ? {} : { factors: named }),
        },
      ]),
    ),
    ...(heights.length + Object.keys(rest).length === 0
      ? {}
      : {
          factors: {
            ...rest,
            ...(heights.length === 0 ? {} : { height: heights.map((overMm, i) => ({ overMm, percent: i / 3 })) }),
          },
        }),
    ...others,
  }));

test('whatever a book says goes out and comes back, in feet and in millimetres', () => {
  fc.assert(
    fc.property(books, fc.constantFrom('ft-in' as const, 'metric' as const), (any, units) => {
      const own = { ...job, project: { ...job.project, units } };
      const answer = read(writeBookSheet(any, own.project), own);
      expect(answer).toMatchObject({ ok: true });
      expect(answer.ok && answer.book).toEqual(any);
      expect(bookChanges(any, any, own.project)).toEqual([]);
    }),
    { seed: 11, numRuns: 150 },
  );
});

test('no cell that goes out would be run as a formula by a spreadsheet', () => {
  const risky = { ...book, version: '=HYPERLINK("x")', crew: [{ ...book.crew![0]!, role: '@SUM(A1)' }] };
  const cells = writeBookSheet(risky, job.project)
    .split('\r\n')
    .flatMap((line) => line.split(','));
  expect(cells.filter((cell) => /^"?[=+\-@]/.test(cell))).toEqual([]);
});

describe('what cannot be read is told by row and column with the remedy, and no book is made', () => {
  test.each([
    [
      'a figure that is none',
      /activity,joint,,each,0\.51,0\.6/,
      'activity,joint,,each,0.51,about',
      'activity,joint',
      'likely',
      '"about" is not a number.',
    ],
    [
      'low above likely',
      /activity,joint,,each,0\.51/,
      'activity,joint,,each,0.7',
      'activity,joint',
      'low',
      'are more than the likely ones, 0.6.',
    ],
    ['a part nobody knows', /condition,open/, 'conditon,open', 'condition,open', 'part', 'is not book, activity'],
    [
      'a condition nobody knows',
      /height; congestion; storey; live/,
      'height; ceiling',
      'activity,handle-section',
      'conditions',
      '"ceiling" is not height',
    ],
    [
      'a band without its activity',
      /activity,section,/,
      'activity,sections,',
      'by length,section',
      'name',
      'No row above gives the activity "section".',
    ],
    [
      'rates in other money',
      /book,currency,,,,,,,USD/,
      'book,currency,,,,,,,EUR',
      'book,currency',
      'value',
      'The rates are in "EUR", and the job’s money is USD.',
    ],
    ['a thing said twice', /learning,rate/, 'range,trials', 'range,trials', 'name', 'This stands in row'],
    ['a formula', /range,seed,,,,,,,1/, 'range,seed,,,,,,,=1+1', 'range,seed', 'value', 'The cell holds a formula.'],
    [
      'a cell that its part has not',
      /range,seed,,,,,,,1/,
      'range,seed,,each,,,,,1',
      'range,seed',
      'unit',
      'A row of range has no unit.',
    ],
  ])('%s', (_what, line, into, start, column, said) => {
    const faults = faultsOf(edited(line, into));
    const found = faults.find((fault) => fault.column === column && fault.problem.includes(said));
    expect(faults).toContain(found);
    expect(found?.row).toBeGreaterThan(1);
    if (sheet.replace(line, into).includes(start))
      expect([rowOf(start), rowOf(start) + 1, found?.row]).toContain(found?.row);
    expect(found?.remedy).not.toBe('');
  });

  test('time lost as a share and by the day, and a day of which all is lost, are told with what to keep', () => {
    const day = (lost: string, share: string) =>
      sheet
        .replace(/book,non-productive %,,,,,,,6/, `book,non-productive %,,,,,,,${share}`)
        .replace(
          /book,currency/,
          `book,hours lost of a day,,,,,,,${lost},,,,\r\nbook,hours of a working day,,,,,,,8,,,,\r\nbook,currency`,
        );
    expect(faultsOf(day('0.5', '0'))).toEqual([]);
    expect(faultsOf(day('0.5', '6')).map(({ problem, remedy }) => `${problem} ${remedy}`)).toEqual([
      'Non-working time is given as 6 % and as hours of the day, and would count twice. Keep one of the two.',
    ]);
    expect(faultsOf(day('8', '0'))).toMatchObject([
      {
        column: 'value',
        problem: 'Of 8 hours a day 8 are lost, so that none is worked.',
        remedy: expect.stringContaining('fewer'),
      },
    ]);
  });

  test('a book without its version is told too', () => {
    expect(faultsOf(edited(/book,version.*\r\n/, '')).map(({ problem, column }) => `${column} ${problem}`)).toEqual([
      expect.stringContaining('version'),
    ]);
  });

  test('an activity that counts nowhere is asked about and taken as typed', () => {
    const answer = read(edited(/activity,punch,/, 'activity,punch-list,'));
    expect(answer).toMatchObject({ ok: true, questions: [{ column: 'name', value: 'punch-list' }] });
  });
});

describe('what differs between two books', () => {
  const next: LabourBookDocument = {
    ...book,
    version: 'shop-2',
    nonProductivePercent: 8,
    activities: { ...book.activities, joint: { ...book.activities.joint!, likely: 0.7 } },
  };

  test('every value that changes, as before and after, and nothing else', () => {
    expect(
      bookChanges(book, next, job.project).map((change) => Object.values(change).filter(Boolean).join(' | ')),
    ).toEqual([
      'book | version | value | demo-1 (invented) | shop-2',
      'book | non-productive % | value | 6 | 8',
      'activity | joint | likely | 0.6 | 0.7',
    ]);
  });

  test('a job without a book gains every value', () => {
    const gained = bookChanges(null, next, job.project);
    expect(gained.every(({ before }) => before === '')).toBe(true);
    expect(gained.length).toBeGreaterThan(100);
  });
});
