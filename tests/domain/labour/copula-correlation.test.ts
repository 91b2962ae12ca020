import { expect, test } from 'vitest';
import { copulaCorrelation } from '../../../src/domain/labour/copula-correlation.ts';
import { NODE_STEP, TABLE_NODES, TABLE_REACH } from '../../../src/domain/labour/quantile-table.ts';

const table = (of: (z: number) => number) =>
  Float64Array.from({ length: TABLE_NODES }, (_, node) => of(node * NODE_STEP - TABLE_REACH));

test('hours that lean to neither side need the stated correlation itself, whatever they weigh', () => {
  expect(copulaCorrelation([table((z) => z), table((z) => 3 * z + 40)], 0.4)).toBeCloseTo(0.4, 6);
});

test.each([0.1, 0.3, 0.5, 0.9])(
  'lognormal hours need what the closed form of their correlation says, at %d',
  (stated) => {
    // Correlation of two lognormals of shape s: (exp(rho s²) - 1) / (exp(s²) - 1); any text on the lognormal distribution.
    const s = 0.6;
    const needed = Math.log(1 + stated * (Math.exp(s * s) - 1)) / (s * s);
    const hours = table((z) => Math.exp(s * z));
    expect(copulaCorrelation([hours, hours], stated)).toBeCloseTo(needed, 5);
  },
);

test('none is none, all is all, and one activity alone has nothing to be correlated with', () => {
  const hours = table((z) => Math.exp(z));
  expect(copulaCorrelation([hours, hours], 0)).toBe(0);
  expect(copulaCorrelation([hours, hours], 1)).toBe(1);
  expect(copulaCorrelation([hours], 0.5)).toBe(0.5);
});

test('where even hours that move together fall short of what is stated, they move together', () => {
  // One leans to high and one to low: together they are never fully correlated.
  expect(copulaCorrelation([table((z) => Math.exp(z)), table((z) => -Math.exp(-z))], 0.9)).toBe(1);
});
