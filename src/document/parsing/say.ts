const NUMBER = new Intl.NumberFormat('en-US', { maximumFractionDigits: 4 });

/** A number as a person reads it. `sayNumber(21336) = '21,336'`. */
export function sayNumber(value: number): string {
  return Number.isFinite(value) ? NUMBER.format(value) : String(value);
}

/** Any value in a few characters, fit for a message. */
export function sayValue(value: unknown): string {
  if (typeof value === 'number') return sayNumber(value);
  if (typeof value === 'string') return `"${shorten(value)}"`;
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object' && value !== null) return 'an object';
  return String(value);
}

/** `sayList(['A', 'B', 'C'], 'or') = 'A, B or C'`. */
export function sayList(items: readonly string[], word: 'and' | 'or'): string {
  if (items.length < 2) return items.join('');
  return `${items.slice(0, -1).join(', ')} ${word} ${items.at(-1)}`;
}

function shorten(text: string): string {
  return text.length <= 60 ? text : `${text.slice(0, 57)}...`;
}
