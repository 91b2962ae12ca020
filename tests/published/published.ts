/** One published value: what goes in, what the source prints, and how near the program must come to it. */
export interface PublishedValue {
  readonly id: string;
  readonly topic: string;
  readonly inputs: unknown;
  readonly expected: unknown;
  readonly unit: string;
  /** Absolute, for every number in `expected`; or one for each of its keys. */
  readonly tolerance: number | Readonly<Record<string, number>>;
  readonly source: string;
  readonly clause: string;
  /** Found in a secondary copy, seen in the source, or from memory. */
  readonly provenance: string;
  readonly note?: string;
}

/** What the program gives for a published value: from its inputs, in the shape of its `expected`. */
export type Calculation = (inputs: never) => unknown;

/**
 * Every place where `actual` is further from `expected` than the tolerance allows, in words; none when they agree.
 * Numbers are compared, other values must be equal, and a key that `expected` does not name is not looked at.
 */
export function departures(expected: unknown, actual: unknown, tolerance: PublishedValue['tolerance']): string[] {
  return compare(expected, actual, tolerance, 'value');
}

function compare(expected: unknown, actual: unknown, tolerance: PublishedValue['tolerance'], path: string): string[] {
  if (typeof expected === 'number') return compareNumbers(expected, actual, tolerance, path);
  if (typeof expected !== 'object' || expected === null) {
    return expected === actual ? [] : [`${path}: ${String(actual)}, published ${String(expected)}`];
  }
  if (typeof actual !== 'object' || actual === null)
    return [`${path}: ${String(actual)}, published ${typeof expected}`];
  return Object.entries(expected).flatMap(([key, value]) => {
    const own = typeof tolerance === 'number' ? tolerance : (tolerance[key] ?? 0);
    return compare(value, Object.entries(actual).find(([name]) => name === key)?.[1], own, `${path}.${key}`);
  });
}

function compareNumbers(
  expected: number,
  actual: unknown,
  tolerance: PublishedValue['tolerance'],
  path: string,
): string[] {
  const allowed = typeof tolerance === 'number' ? tolerance : 0;
  const isNear = typeof actual === 'number' && Math.abs(actual - expected) <= allowed;
  return isNear ? [] : [`${path}: ${String(actual)}, published ${expected} ± ${allowed}`];
}
