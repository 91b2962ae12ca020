/** Money is a whole number of minor units (cents, pence) of an ISO 4217 currency. */
export type Minor = number;

export type ParsedMoney =
  | { readonly ok: true; readonly minor: Minor }
  | { readonly ok: false; readonly problem: string; readonly remedy: string };

/** Past this, sums of money would no longer be exact: ten thousand million of a currency with two decimals. */
const MOST: Minor = 1_000_000_000_000;

/** Decimals of a currency by ISO 4217. `minorDigits('USD') = 2`, `minorDigits('JPY') = 0`. */
export function minorDigits(currency: string): number {
  return new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2;
}

/** Minor units as people read them. `formatMoney(126310000, 'USD') = '$1,263,100.00'`. */
export function formatMoney(minor: Minor, currency: string, locale = 'en-US'): string {
  // The quotient is the double nearest to the decimal, and up to `MOST` its first decimals are the decimal's own.
  const major = minor / 10 ** minorDigits(currency);
  return new Intl.NumberFormat(locale, { style: 'currency', currency }).format(major);
}

/** Minor units as a plain decimal for a field or a CSV cell. `writeMoney(-1250, 'USD') = '-12.50'`. */
export function writeMoney(minor: Minor, currency: string): string {
  return toDecimal(minor, minorDigits(currency));
}

/**
 * Reads money in the currency of the job: `1,263,100`, `$1,263,100.00`, `12,50`, `USD 12.50`, `-12.50`, `(12.50)`.
 * Decimals that the currency does not have are refused, never rounded away.
 * `parseMoney('$12.50', 'USD') = { ok: true, minor: 1250 }`.
 */
export function parseMoney(text: string, currency: string): ParsedMoney {
  const digits = minorDigits(currency);
  const example = writeMoney(126_310_000, currency);
  const plain = plainMoney(text, currency);
  if (plain === '') return refuse('No amount was given.', `Write it like ${example}.`);
  const [, sign = '', whole = '', decimals = ''] = /^(-?)(\d+)(?:\.(\d+))?$/.exec(plain) ?? [];
  if (whole === '') return refuse('This cannot be read as an amount of money.', `Write it like ${example}.`);
  if (decimals.length > digits) {
    const problem = `${plain} has ${decimals.length} decimals; ${currency} has ${digits}.`;
    return refuse(problem, `Write it like ${example}.`);
  }
  const minor = Number(whole + decimals.padEnd(digits, '0'));
  if (minor > MOST)
    return refuse(`${plain} is more than can be reckoned with.`, `The most is ${writeMoney(MOST, currency)}.`);
  return { ok: true, minor: sign === '-' && minor > 0 ? -minor : minor };
}

function refuse(problem: string, remedy: string): ParsedMoney {
  return { ok: false, problem, remedy };
}

/** Without the currency's own mark or code, grouping or brackets, with a point before the decimals. */
function plainMoney(text: string, currency: string): string {
  const marks = [symbolOf(currency, 'symbol'), currency, symbolOf(currency, 'narrowSymbol')];
  const bare = marks
    .reduce((left, mark) => left.replaceAll(mark, ''), text.trim().toUpperCase())
    .replace(/[\u2212\u2013]/g, '-')
    .replace(/\s/g, '');
  const signed = bare.replace(/^\(([^()-]+)\)$/, '-$1');
  if (/^-?\d{1,3}(,\d{3})+(\.\d*)?$/.test(signed)) return signed.replaceAll(',', '').replace(/\.$/, '');
  return signed.replace(/^(-?\d+),(\d{1,2})$/, '$1.$2').replace(/\.$/, '');
}

function symbolOf(currency: string, currencyDisplay: 'symbol' | 'narrowSymbol'): string {
  const parts = new Intl.NumberFormat('en', { style: 'currency', currency, currencyDisplay }).formatToParts(0);
  return parts.find((part) => part.type === 'currency')?.value ?? currency;
}

/** Exact, because it works on the digits and never divides. */
function toDecimal(minor: Minor, digits: number): string {
  const size = String(Math.abs(minor)).padStart(digits + 1, '0');
  const whole = size.slice(0, size.length - digits);
  const sign = minor < 0 ? '-' : '';
  return digits === 0 ? `${sign}${whole}` : `${sign}${whole}.${size.slice(-digits)}`;
}
