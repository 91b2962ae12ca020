import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Calculation, departures, type PublishedValue } from './published.ts';

// Every values/NAME.json holds published values, and NAME.ts beside it the calculation for each of their ids. A new area
// needs those two files and nothing else.

const here = new URL('./values/', import.meta.url);
const areas = readdirSync(here)
  .filter((file) => file.endsWith('.json'))
  .map((file) => file.replace(/\.json$/, ''));

for (const area of areas) {
  const values: readonly PublishedValue[] = JSON.parse(readFileSync(new URL(`${area}.json`, here), 'utf8'));
  const { calculations }: { calculations: Readonly<Record<string, Calculation>> } = await import(`./values/${area}.ts`);

  describe(`published values: ${area}`, () => {
    test.each(values.map((value) => [value.id, value] as const))('%s comes out as published', (id, value) => {
      const calculate = calculations[id];
      expect(calculate, `no calculation for ${id} in ${area}.ts`).toBeDefined();
      const actual = calculate?.(value.inputs as never);
      const words = `${value.topic}: ${value.source}, ${value.clause}`;
      expect(departures(value.expected, actual, value.tolerance), words).toEqual([]);
    });

    test('every value names its source, its clause and where it was seen, and every calculation has its value', () => {
      for (const { source, clause, provenance } of values) expect([source, clause, provenance]).not.toContain('');
      expect(Object.keys(calculations).sort()).toEqual(values.map(({ id }) => id).sort());
    });
  });
}

test('a value that is off, missing or of another kind is named as a departure', () => {
  expect(departures(1, 1.2, 0.1)).toEqual(['value: 1.2, published 1 ± 0.1']);
  expect(departures({ a: [1, 2] }, { a: [1] }, 0)).toEqual(['value.a.1: undefined, published 2 ± 0']);
  expect(departures({ ok: true }, { ok: false }, 0)).toEqual(['value.ok: false, published true']);
  expect(departures(1, Number.NaN, 1)).toHaveLength(1);
  expect(departures({ a: 1, b: 10 }, { a: 1.05, b: 11 }, { a: 0.1, b: 2 })).toEqual([]);
});
