import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FOOT, fromMm, INCH, SIXTEENTH } from '../../../src/domain/units/length.ts';
import { COORDINATE, DISTANCE, LEG, parseLength } from '../../../src/domain/units/parse-length.ts';

const TWELVE_SIX_AND_A_HALF = 12 * FOOT + 6 * INCH + 8 * SIXTEENTH;

describe('the forms that a length is typed in', () => {
  test.each([
    [`12'-6 1/2"`, TWELVE_SIX_AND_A_HALF],
    [`12' 6.5"`, TWELVE_SIX_AND_A_HALF],
    [`12'6-1/2`.replace('-', ' '), TWELVE_SIX_AND_A_HALF],
    ['12′–6½″', TWELVE_SIX_AND_A_HALF],
    ['12’ 6½”', TWELVE_SIX_AND_A_HALF],
    ['12 ft 6 1/2 in', TWELVE_SIX_AND_A_HALF],
    ['12 ft. 6 1/2 in.', TWELVE_SIX_AND_A_HALF],
    ['12ft6.5in', TWELVE_SIX_AND_A_HALF],
    ['12.5 ft', fromMm(3810)],
    ['12.5 feet', fromMm(3810)],
    ["12.5'", fromMm(3810)],
    ['150 in', fromMm(3810)],
    ['150"', fromMm(3810)],
    ['3810 mm', fromMm(3810)],
    ['3,810 mm', fromMm(3810)],
    ['3 810 mm', fromMm(3810)],
    ['381 cm', fromMm(3810)],
    ['3.81 m', fromMm(3810)],
    ['3,81 m', fromMm(3810)],
    ['3.81 metres', fromMm(3810)],
    [`6"`, 6 * INCH],
    [`½"`, 8 * SIXTEENTH],
    [`7/16"`, 7 * SIXTEENTH],
    [`12½"`, 12 * INCH + 8 * SIXTEENTH],
    [`0`, 0],
  ])('%s', (text, length) => {
    expect(parseLength(text, 'ft-in')).toEqual({ ok: true, length });
    expect(parseLength(text, 'metric')).toEqual({ ok: true, length });
  });

  test('a bare number is feet in a feet-and-inches job and millimetres in a metric one', () => {
    expect(parseLength('12.5', 'ft-in')).toEqual({ ok: true, length: fromMm(3810) });
    expect(parseLength('3810', 'metric')).toEqual({ ok: true, length: fromMm(3810) });
  });

  test('places may be negative where the field allows it', () => {
    expect(parseLength(`-12'-6 1/2"`, 'ft-in', COORDINATE)).toEqual({ ok: true, length: -TWELVE_SIX_AND_A_HALF });
    expect(parseLength('\u22123.81 m', 'metric', COORDINATE)).toEqual({ ok: true, length: -fromMm(3810) });
  });
});

describe('slips of the keyboard', () => {
  test('10.6 is taken as decimal feet, and asked about', () => {
    expect(parseLength('10.6', 'ft-in')).toEqual({
      ok: true,
      length: Math.round(10.6 * FOOT),
      note: `10.6 ft is 10'-7 3/16". Did you mean 10'-6"?`,
      suggestion: `10'-6"`,
    });
  });

  test('decimal feet that are a whole sixteenth are not asked about', () => {
    expect(parseLength('10.5', 'ft-in')).toEqual({ ok: true, length: 10 * FOOT + 6 * INCH });
    expect(parseLength('10.75', 'ft-in')).toEqual({ ok: true, length: 10 * FOOT + 9 * INCH });
  });

  test('decimals that cannot be inches are only told what they are', () => {
    expect(parseLength('10.33', 'ft-in')).toMatchObject({ ok: true, note: `10.33 ft is 10'-3 15/16".` });
  });

  test('millimetres in a feet field are four miles, and millimetres are offered', () => {
    expect(parseLength('21336', 'ft-in')).toEqual({
      ok: false,
      problem: '21,336 ft is 4 miles.',
      remedy: '21,336 mm = 70.0 ft. If you meant millimetres, write 21336 mm.',
      suggestion: '21336 mm',
    });
  });

  test('feet or metres in a millimetre field are too short for a leg, and metres are offered', () => {
    expect(parseLength('21.336', 'metric', LEG)).toMatchObject({ ok: false, suggestion: '21.336 m' });
  });

  test('a figure that no unit makes plausible is refused with the range', () => {
    expect(parseLength('99999999 mm', 'ft-in', LEG)).toMatchObject({
      ok: false,
      remedy: expect.stringContaining('Give a length from'),
    });
  });

  test('a negative distance is refused, and the positive one is offered', () => {
    expect(parseLength('-5', 'ft-in')).toEqual({
      ok: false,
      problem: '-5 ft is negative; a length here is not.',
      remedy: 'Did you mean 5 ft?',
      suggestion: '5 ft',
    });
    expect(parseLength(`-12'-6"`, 'ft-in', DISTANCE)).toMatchObject({ ok: false, suggestion: `12'-6"` });
  });

  test('fourteen inches after twelve feet are carried over', () => {
    expect(parseLength(`12'-14"`, 'ft-in')).toMatchObject({ ok: false, suggestion: `13'-2"` });
  });

  test.each(['12-6', '12 6', '12 - 6'])('%s has no marks: the reading is offered, not taken', (text) => {
    expect(parseLength(text, 'ft-in')).toMatchObject({ ok: false, suggestion: `12'-6"` });
  });

  test.each([
    '',
    '   ',
    'abc',
    '1e3',
    '0x10',
    '12 ft 6 ft',
    `12.5' 6"`,
    '5 1/0"',
    '6 3/2"',
    '6.5 1/2"',
    '١٢',
    "'",
    '-',
    'NaN',
    '3 m 20',
  ])('"%s" is refused with an example of how to write it', (text) => {
    expect(parseLength(text, 'ft-in')).toMatchObject({ ok: false, remedy: expect.stringContaining('Write it like') });
  });

  test('a figure that was shown rounded is not read back as if it were exact', () => {
    expect(parseLength(`≈10'-7 3/16"`, 'ft-in')).toMatchObject({ ok: false });
  });
});

test('no text whatever makes the reading fail, or gives a length outside its range', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme', maxLength: 30 }), (text) => {
      const read = parseLength(text, 'ft-in');
      expect(!read.ok || (Number.isInteger(read.length) && read.length >= 0 && read.length <= DISTANCE.max)).toBe(true);
    }),
  );
});

test('feet, inches and a fraction add up, whatever they are', () => {
  const feet = fc.integer({ min: 0, max: 3000 });
  const inches = fc.integer({ min: 0, max: 11 });
  const fraction = fc.constantFrom(
    ...([
      [1, 2],
      [1, 4],
      [3, 8],
      [15, 16],
    ] as const),
  );
  fc.assert(
    fc.property(feet, inches, fraction, (ft, inch, [over, under]) => {
      const length = ft * 24_384 + inch * 2_032 + (over / under) * 2_032;
      expect(parseLength(`${ft}'-${inch} ${over}/${under}"`, 'ft-in')).toEqual({ ok: true, length });
    }),
  );
});
