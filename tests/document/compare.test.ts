import { describe, expect, test } from 'vitest';
import { compareDocuments } from '../../src/document/compare.ts';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import { fullDocument } from './full-document.ts';

test('equal documents differ in nothing', () => {
  expect(compareDocuments(fullDocument(), fullDocument())).toEqual([]);
  expect(compareDocuments(demoJob(), demoJob())).toEqual([]);
});

describe('a change is told by noun, label and path', () => {
  test('a leg that grew', () => {
    const after = fullDocument();
    after.runs[0]!.legs[0]!.lengthMm = 18_300;
    expect(compareDocuments(fullDocument(), after)).toEqual([
      {
        noun: 'run',
        id: 'F1-R1-A',
        run: null,
        change: 'changed',
        fields: [{ path: 'legs[0].lengthMm', before: 18_288, after: 18_300 }],
      },
    ]);
  });

  test('a tap that moved is told as the tap of its run, not as the run', () => {
    const after = fullDocument();
    after.runs[0]!.taps![0]!.atMm = 1700;
    expect(compareDocuments(fullDocument(), after)).toEqual([
      {
        noun: 'tap',
        id: 'T1',
        run: 'F1-R1-A',
        change: 'changed',
        fields: [{ path: 'atMm', before: 1600, after: 1700 }],
      },
    ]);
  });

  test('a key that came and a key that went', () => {
    const after = fullDocument();
    after.levels[1]!.elevationMm = 5400;
    after.project.client = undefined;
    expect(
      compareDocuments(fullDocument(), after).flatMap(({ noun, fields }) => fields.map((field) => [noun, field])),
    ).toEqual([
      ['project', { path: 'client', before: 'Nobody', after: undefined }],
      ['level', { path: 'elevationMm', before: undefined, after: 5400 }],
    ]);
  });

  test('a list that grew shorter shows what it lost', () => {
    const after = fullDocument();
    after.buswayTypes[0]!.stockLengthsMm = [1524, 3048];
    expect(compareDocuments(fullDocument(), after)[0]).toMatchObject({
      noun: 'busway type',
      id: 'demo-225A-3PN',
      fields: [{ path: 'stockLengthsMm[2]', before: 1524, after: undefined }],
    });
  });

  test('hours of one activity, and the rest of the labour book, stand apart', () => {
    const after = fullDocument();
    after.labourBook!.activities.section!.likely = 0.65;
    after.labourBook!.version = 'demo-2';
    expect(compareDocuments(fullDocument(), after)).toMatchObject([
      { noun: 'labour book', id: '', change: 'changed', fields: [{ path: 'version' }] },
      { noun: 'activity', id: 'section', change: 'changed', fields: [{ path: 'likely', before: 0.6, after: 0.65 }] },
    ]);
  });

  test('null and absent are not the same', () => {
    const after = fullDocument();
    after.runs[1]!.side = undefined;
    expect(compareDocuments(fullDocument(), after)).toMatchObject([
      { fields: [{ path: 'side', before: null, after: undefined }] },
    ]);
  });
});

describe('what came and what went', () => {
  test('a run that was taken out goes with its taps, as one thing', () => {
    const after = fullDocument();
    after.runs = after.runs.slice(1);
    expect(compareDocuments(fullDocument(), after)).toEqual([
      { noun: 'run', id: 'F1-R1-A', run: null, change: 'removed', fields: [] },
    ]);
  });

  test('a renamed level is one removed and one added', () => {
    const after = fullDocument();
    after.levels[1]!.id = 'F3';
    expect(compareDocuments(fullDocument(), after).map(({ noun, id, change }) => [noun, id, change])).toEqual([
      ['level', 'F2', 'removed'],
      ['level', 'F3', 'added'],
    ]);
  });

  test('a bid and a labour book that came', () => {
    const { bid: _bid, labourBook: _book, ...before } = fullDocument();
    expect(compareDocuments(before, fullDocument())).toEqual([
      { noun: 'labour book', id: '', run: null, change: 'added', fields: [] },
      { noun: 'bid', id: '', run: null, change: 'added', fields: [] },
    ]);
  });

  test('extras are known by item and level, and counted where they repeat', () => {
    const after = fullDocument();
    after.extras = [...after.extras!, { item: 'Hookstick', level: 'F1', quantity: 5, unit: 'each' }];
    expect(compareDocuments(fullDocument(), after)).toEqual([
      { noun: 'extra', id: 'Hookstick on F1 (2)', run: null, change: 'added', fields: [] },
    ]);
  });
});

test('runs that changed places are told as an order, since repeats are learned in it', () => {
  const after = fullDocument();
  after.runs = [after.runs[1]!, after.runs[0]!, after.runs[2]!];
  expect(compareDocuments(fullDocument(), after)).toEqual([
    {
      noun: 'run',
      id: '',
      run: null,
      change: 'reordered',
      fields: [{ path: '', before: ['F1-R1-A', 'F1-R1-B', 'F2-R2'], after: ['F1-R1-B', 'F1-R1-A', 'F2-R2'] }],
    },
  ]);
});
