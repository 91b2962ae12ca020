/** JSON with keys in code-point order and no spaces, so that equal values have equal bytes. `canonicalJson({b:1,a:2}) = '{"a":2,"b":1}'`. */
export function canonicalJson(value: unknown): string {
  return JSON.stringify(sorted(value));
}

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (value === null || typeof value !== 'object') return value;
  const entries = Object.entries(value).filter(([, held]) => held !== undefined);
  entries.sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
  return Object.fromEntries(entries.map(([key, held]) => [key, sorted(held)]));
}
