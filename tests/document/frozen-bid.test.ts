import { expect, test } from 'vitest';
import { frozenFigures } from '../../src/document/frozen-bid.ts';
import type { JobDocument } from '../../src/document/job-document.ts';
import { printFigures } from '../../src/document/print-figures.ts';
import { toModel } from '../../src/document/to-model.ts';
import { figures } from '../../src/domain/figures.ts';
import { scenarioT2 } from '../support/scenarios.ts';

function both(document: JobDocument) {
  const computed = figures(toModel(document));
  return { frozen: frozenFigures(document, computed), printed: printFigures(computed).bid };
}

// A hash was taken over the figures as they were kept: a bid of sums alone has to be kept and printed just as it was.
test('a bid of sums alone is frozen and printed with the keys that it always had', () => {
  const { frozen, printed } = both(scenarioT2());
  expect(Object.keys(frozen ?? {}).sort()).toEqual(
    ['byActivity', 'byLevel', 'cost', 'hours', 'incomplete', 'labourBook', 'lines', 'materials', 'price'].sort(),
  );
  expect(frozen?.lines.map((line) => Object.keys(line).sort())).toEqual(
    (frozen?.lines ?? []).map(() => ['amount', 'line', 'working']),
  );
  expect(frozen?.lines.find(({ line }) => line === 'tax')?.working).toEqual({
    kind: 'percent',
    percent: 7,
    of: 126_310_000,
  });
  expect(Object.keys(printed ?? {})).toEqual(['lines', 'cost', 'price', 'incomplete']);
  expect(printed?.lines.map((line) => Object.keys(line))).toEqual((printed?.lines ?? []).map(() => ['line', 'amount']));
});

test('taxes by category keep their names, and alternates, unit prices and level totals are kept and printed', () => {
  const plain = scenarioT2();
  const { frozen, printed } = both({
    ...plain,
    bid: {
      ...plain.bid,
      freight: 100_000,
      taxes: [{ name: 'County', percent: 1, on: ['freight'] }],
      alternates: [{ name: 'Meters', kind: 'add', other: 10_000 }],
      unitPrices: [{ item: 'tap', offered: 50_000 }],
      quotes: [
        {
          id: 'A',
          package: 'Sealing',
          goesTo: 'subcontracts',
          supplier: 'Invented',
          chosen: true,
          freight: 'in',
          tax: 'out',
          lines: [{ item: 'fire-seal', state: 'priced', amount: 5_000 }],
        },
      ],
    },
  });
  expect(frozen?.lines).toContainEqual(expect.objectContaining({ line: 'tax', label: 'County', amount: 1_000 }));
  expect(printed?.lines).toContainEqual({ line: 'tax', label: 'County', amount: 1_000 });
  expect(frozen?.quotes).toEqual([
    { package: 'Sealing', id: 'A', supplier: 'Invented', levelled: 5_000, chosen: true, missing: [] },
  ]);
  expect(frozen?.alternates).toEqual([{ name: 'Meters', kind: 'add', amount: expect.any(Number) }]);
  expect(frozen?.unitPrices?.lines).toMatchObject([{ item: 'tap', price: 50_000, extended: 48_000_000 }]);
  expect(printed).toMatchObject({ unitPriceRemainder: frozen?.unitPrices?.remainder });
});
