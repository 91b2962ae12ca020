import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { allocate } from '../../../src/domain/units/allocate.ts';
import { formatMoney, minorDigits, parseMoney, writeMoney } from '../../../src/domain/units/money.ts';
import { roundWhole } from '../../../src/domain/units/round.ts';

describe('reading and writing money', () => {
  // ISO 4217, table A.1: two decimals as a rule, none for the yen, three for the Bahraini dinar. From memory.
  test.each([
    ['USD', 2],
    ['GBP', 2],
    ['JPY', 0],
    ['BHD', 3],
  ])('%s has %i decimals', (currency, digits) => {
    expect(minorDigits(currency)).toBe(digits);
  });

  test.each([
    ['1263100', 126_310_000],
    ['1,263,100', 126_310_000],
    ['$1,263,100.00', 126_310_000],
    ['USD 12.50', 1_250],
    ['12.5', 1_250],
    ['12,50', 1_250],
    ['-12.50', -1_250],
    ['(12.50)', -1_250],
    ['0', 0],
    ['-0', 0],
  ])('%s', (text, minor) => {
    expect(parseMoney(text, 'USD')).toEqual({ ok: true, minor });
  });

  test('shows the currency, and writes a plain decimal for a field', () => {
    expect(formatMoney(126_310_000, 'USD')).toBe('$1,263,100.00');
    expect(formatMoney(-5, 'USD')).toBe('-$0.05');
    expect(formatMoney(1_234, 'JPY')).toBe('¥1,234');
    expect(writeMoney(-5, 'USD')).toBe('-0.05');
    expect(writeMoney(1_234, 'JPY')).toBe('1234');
  });

  test('decimals that the currency does not have are refused, not rounded away', () => {
    expect(parseMoney('12.345', 'USD')).toMatchObject({ ok: false, problem: '12.345 has 3 decimals; USD has 2.' });
    expect(parseMoney('12.5', 'JPY')).toMatchObject({ ok: false });
  });

  test.each(['', 'abc', '1.2.3', '--5', '1e5', '€5', '99999999999999'])('"%s" is refused', (text) => {
    expect(parseMoney(text, 'USD')).toMatchObject({ ok: false });
  });

  test('any amount reads as it shows', () => {
    const currencies = fc.constantFrom('USD', 'GBP', 'EUR', 'CAD', 'JPY', 'BHD');
    const amounts = fc.integer({ min: -1_000_000_000_000, max: 1_000_000_000_000 });
    fc.assert(
      fc.property(amounts, currencies, (minor, currency) => {
        expect(parseMoney(formatMoney(minor, currency), currency)).toEqual({ ok: true, minor: minor + 0 });
        expect(parseMoney(writeMoney(minor, currency), currency)).toEqual({ ok: true, minor: minor + 0 });
      }),
    );
  });
});

describe('splitting an amount', () => {
  test('a dollar in three gives the odd cent to the first', () => {
    expect(allocate(100, [1, 1, 1])).toEqual([34, 33, 33]);
    expect(allocate(-100, [1, 1, 1])).toEqual([-34, -33, -33]);
  });

  // Hamilton's method on 100 seats; the quotas are the example printed in encyclopaedias for it. From memory.
  test('the largest remainders get what is left', () => {
    expect(allocate(10, [47_000, 16_000, 15_800, 12_000, 6_100, 3_100])).toEqual([5, 2, 1, 1, 1, 0]);
  });

  test('a part with no weight gets nothing', () => {
    expect(allocate(7, [0, 1, 0, 1])).toEqual([0, 4, 0, 3]);
  });

  test('the parts add up to the whole, keep its sign, and are within one of their share', () => {
    const weights = fc
      .array(fc.double({ min: 0, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 40 })
      .filter((list) => list.some((weight) => weight > 1e-3));
    fc.assert(
      fc.property(fc.integer({ min: -1_000_000_000, max: 1_000_000_000 }), weights, (total, list) => {
        const parts = allocate(total, list);
        const sum = list.reduce((a, b) => a + b, 0);
        expect(parts.reduce((a, b) => a + b, 0)).toBe(total);
        expect(parts.every((part, i) => Math.abs(part - (total * (list[i] ?? 0)) / sum) < 1 + 1e-6)).toBe(true);
      }),
    );
  });

  test('nothing to weigh by is our own mistake, and is thrown', () => {
    expect(() => allocate(100, [0, 0])).toThrow(RangeError);
    expect(() => allocate(100, [])).toThrow(RangeError);
    expect(() => allocate(0.5, [1])).toThrow(RangeError);
    expect(() => allocate(1, [1, -1])).toThrow(RangeError);
  });
});

describe('rounding by name', () => {
  test.each([
    [0.5, 0, 1],
    [1.5, 2, 2],
    [2.5, 2, 3],
    [-0.5, 0, -1],
    [-2.5, -2, -3],
    [2.4999, 2, 2],
    [2.5001, 3, 3],
    [1.005 * 100, 100, 101],
  ])('%d goes to %i half-even and %i half-up', (value, even, up) => {
    expect(roundWhole(value, 'half-even')).toBe(even);
    expect(roundWhole(value, 'half-up')).toBe(up);
  });
});
