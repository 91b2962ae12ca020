import { expect, test } from 'vitest';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import { type JobDocument, parseJobDocument } from '../../src/document/job-document.ts';
import { withoutMoney } from '../../src/document/money-fence.ts';
import { fullDocument } from './full-document.ts';

/** Every figure of money in the full document; each is written so that it stands nowhere else in it. */
const MONEY = [
  72_001, 24_003, 9_001, 18_503, 64_001, 98_003, 145_001, 9_503, 6_803, 62_003, 21_503, 6_503, -1_503, 8_803,
  126_310_001, 11_230_003, 7_232_001,
];

test('every figure of money stands in the document, and none in the one without money', () => {
  const before = JSON.stringify(fullDocument());
  const after = JSON.stringify(withoutMoney(fullDocument()));
  expect(MONEY.filter((figure) => !before.includes(String(figure)))).toEqual([]);
  expect(MONEY.filter((figure) => after.includes(String(figure)))).toEqual([]);
});

test('no key that carries money is left, in the demo job either', () => {
  const after = JSON.stringify([withoutMoney(fullDocument()), withoutMoney(demoJob())]);
  expect(after).not.toMatch(
    /"(prices?|bid|crew|ratePerHour|burdenPercent|overtime|profit|overheadPercent|taxPercent)"/,
  );
});

test('everything else is as it was', () => {
  const document = fullDocument();
  const after = withoutMoney(document);
  expect(after).toMatchObject({
    project: document.project,
    levels: document.levels,
    runs: document.runs,
    extras: [{ item: 'Hookstick', quantity: 2, hours: 0.5 }, { item: 'Credit' }],
    labourBook: { activities: document.labourBook?.activities, learning: document.labourBook?.learning },
  });
  expect(after.buswayTypes[0]).toMatchObject({ id: 'demo-225A-3PN', stockLengthsMm: [1524, 3048, 1524] });
});

test('what is left is still a job document, by its type and by its schema', () => {
  const document: JobDocument = withoutMoney(fullDocument());
  expect(parseJobDocument(document)).toMatchObject({ ok: true });
});

test('a document without money is not given any', () => {
  const { bid: _bid, labourBook: _book, extras: _extras, ...bare } = fullDocument();
  expect(Object.keys(withoutMoney(bare)).sort()).toEqual(['buswayTypes', 'format', 'levels', 'project', 'runs']);
});
