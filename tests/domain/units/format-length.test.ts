import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatLength, writeLength } from '../../../src/domain/units/format-length.ts';
import { FOOT, fromMm, INCH, SIXTEENTH } from '../../../src/domain/units/length.ts';
import { COORDINATE, parseLength } from '../../../src/domain/units/parse-length.ts';

describe('feet, inches and sixteenths', () => {
  test.each([
    [12 * FOOT + 6 * INCH + 8 * SIXTEENTH, `12'-6 1/2"`],
    [12 * FOOT + 6 * INCH, `12'-6"`],
    [12 * FOOT, `12'-0"`],
    [12 * FOOT + 3 * SIXTEENTH, `12'-0 3/16"`],
    [6 * INCH, `6"`],
    [6 * INCH + 12 * SIXTEENTH, `6 3/4"`],
    [SIXTEENTH, `1/16"`],
    [0, `0"`],
    [-(12 * FOOT + 6 * INCH + 8 * SIXTEENTH), `-12'-6 1/2"`],
    [fromMm(3048), `10'-0"`],
  ])('%i/80 mm reads %s', (length, text) => {
    expect(formatLength(length, 'ft-in')).toBe(text);
  });

  test('a length between two sixteenths is shown at the nearer one, behind its mark', () => {
    expect(formatLength(fromMm(3230.88), 'ft-in')).toBe(`≈10'-7 3/16"`);
    expect(formatLength(-fromMm(3230.88), 'ft-in')).toBe(`≈-10'-7 3/16"`);
  });

  test('what rounds to a whole foot is written as that foot, not as twelve inches', () => {
    expect(formatLength(FOOT - 1, 'ft-in')).toBe(`≈1'-0"`);
  });
});

describe('metres', () => {
  test.each([
    [fromMm(3810), '3.810 m'],
    [fromMm(610), '0.610 m'],
    [fromMm(-5), '-0.005 m'],
    [0, '0.000 m'],
    [fromMm(1_000_000), '1000.000 m'],
  ])('%i/80 mm reads %s', (length, text) => {
    expect(formatLength(length, 'metric')).toBe(text);
  });

  test('a sixteenth of an inch is no whole millimetre and says so', () => {
    expect(formatLength(SIXTEENTH, 'metric')).toBe('≈0.002 m');
  });
});

const units = fc.constantFrom('ft-in' as const, 'metric' as const);

test('any length that a field holds comes back from it unchanged', () => {
  const lengths = fc.integer({ min: COORDINATE.min, max: COORDINATE.max });
  fc.assert(
    fc.property(lengths, units, (length, system) => {
      expect(parseLength(writeLength(length, system), system, COORDINATE)).toMatchObject({ ok: true, length });
    }),
  );
});

test('any whole sixteenth shows as it was typed, and reads as it shows', () => {
  fc.assert(
    fc.property(fc.integer({ min: -800_000, max: 800_000 }), (count) => {
      const length = count * SIXTEENTH;
      const shown = formatLength(length, 'ft-in');
      expect(shown).not.toContain('≈');
      expect(parseLength(shown, 'metric', COORDINATE)).toMatchObject({ ok: true, length });
    }),
  );
});

test('any whole millimetre shows in metres and reads as it shows', () => {
  fc.assert(
    fc.property(fc.integer({ min: -1_000_000, max: 1_000_000 }), (mm) => {
      expect(parseLength(formatLength(fromMm(mm), 'metric'), 'ft-in', COORDINATE)).toMatchObject({
        ok: true,
        length: fromMm(mm),
      });
    }),
  );
});
