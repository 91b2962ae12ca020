import { describe, expect, test } from 'vitest';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import type { LabourBookDocument } from '../../src/document/job-document.ts';
import { readLabourBookForm, writeLabourBookForm } from '../../src/document/labour-book-form/form.ts';
import { fullDocument } from './full-document.ts';

const feet = { units: 'ft-in', currency: 'USD' } as const;
const metric = { units: 'metric', currency: 'EUR' } as const;
const bookOf = (document: { labourBook?: LabourBookDocument }) => {
  if (document.labourBook === undefined) throw new Error('the document has a labour book');
  return document.labourBook;
};
const books = [
  ['the demo', bookOf(demoJob())],
  ['a document with every key', bookOf(fullDocument())],
] as const;

describe.each(books)('the labour book of %s', (_, book) => {
  test.each([feet, metric])('saved untouched is the same book, in $units', (project) => {
    const read = readLabourBookForm(writeLabourBookForm(book, project), project, book);
    expect(read.faults).toEqual([]);
    expect(read.book).toEqual(book);
  });
});

const demo = bookOf(demoJob());
const typed = (changes: Record<string, string>) =>
  readLabourBookForm({ ...writeLabourBookForm(demo, feet), ...changes }, feet, demo);

test('one labour unit that is typed anew changes that one alone', () => {
  const { book } = typed({ 'activities.joint.likely': '0.65' });
  expect(book.activities.joint).toEqual({ ...demo.activities.joint, likely: 0.65 });
  expect({ ...book.activities, joint: null }).toEqual({ ...demo.activities, joint: null });
});

test('hours by rated current are typed beside those by length, and come back as they went in', () => {
  const { book, faults } = typed({
    'activities.joint.bands': `250 A: 0.4 / 0.5 / 0.7; 800A: .8/.9/1.4`,
    'activities.section.bands': `250 A, 10'-0": 0.4 / 0.5 / 0.7`,
  });
  expect(faults).toEqual([]);
  expect(book.activities.joint?.bands).toEqual([
    { upToA: 250, low: 0.4, likely: 0.5, high: 0.7 },
    { upToA: 800, low: 0.8, likely: 0.9, high: 1.4 },
  ]);
  expect(book.activities.section?.bands).toEqual([{ upToA: 250, upToMm: 3048, low: 0.4, likely: 0.5, high: 0.7 }]);
  const again = writeLabourBookForm(book, demoJob().project);
  expect(again['activities.joint.bands']).toBe('250 A: 0.4 / 0.5 / 0.7; 800 A: 0.8 / 0.9 / 1.4');
  expect(again['activities.section.bands']).toBe(`250 A, 10'-0": 0.4 / 0.5 / 0.7`);
});

test('a crew row that is cleared goes, one that is half filled in stays for the check to name', () => {
  const cleared = typed({
    'crew[1].role': '',
    'crew[1].number': '',
    'crew[1].ratePerHour': '',
    'crew[1].effectiveness': '',
  });
  expect(cleared.book.crew?.[1]).toEqual({});
  const last = (demo.crew?.length ?? 0) - 1;
  const gone = typed(
    Object.fromEntries(['role', 'number', 'ratePerHour', 'effectiveness'].map((cell) => [`crew[${last}].${cell}`, ''])),
  );
  expect(gone.book.crew).toEqual(demo.crew?.slice(0, last));
});

test.each([
  ['activities.joint.low', 'half', '"half" is not a number'],
  ['activities.section.bands', `5'-0" 0.4`, 'has no colon'],
  ['activities.section.bands', `5'-0": 0.4`, 'needs 3 figures'],
  ['factors.height', `12'-0": -5`, 'not below 0'],
  ['crew[0].ratePerHour', 'much', 'cannot be read as an amount of money'],
])('%s typed as "%s" is told beside its field', (field, text, said) => {
  const { faults } = typed({ [field]: text });
  expect(faults).toHaveLength(1);
  expect(faults[0]?.field).toBe(field);
  expect(faults[0]?.said).toContain(said);
});
