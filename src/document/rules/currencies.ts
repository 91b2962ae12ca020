// ISO 4217 reserves these two for "no currency" and for tests.
const CURRENCIES = new Set([...Intl.supportedValuesOf('currency'), 'XXX', 'XTS']);

/** Whether three letters are a currency of ISO 4217. */
export function isCurrency(letters: string): boolean {
  return CURRENCIES.has(letters);
}
