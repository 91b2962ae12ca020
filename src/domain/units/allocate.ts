/**
 * Splits a whole amount in proportion to `weights` so that the parts are whole and add up to it: each part is its exact
 * share rounded down, and what is left goes by one to the largest remainders, the earlier first at a tie (Hamilton's
 * method). A negative amount is split as its positive one. Throws where no weight is above 0 or one is below.
 * `allocate(100, [1, 1, 1]) = [34, 33, 33]`.
 */
export function allocate(total: number, weights: readonly number[]): number[] {
  const sum = weights.reduce((a, b) => a + b, 0);
  const areFit =
    Number.isSafeInteger(total) && weights.every((weight) => weight >= 0) && sum > 0 && Number.isFinite(sum);
  if (!areFit)
    throw new RangeError('allocate needs a whole amount and weights that are not negative, one of them above 0');
  const amount = Math.abs(total);
  const shares = weights.map((weight) => amount * (weight / sum));
  const parts = shares.map(Math.floor);
  handOut(parts, shares, amount - parts.reduce((a, b) => a + b, 0));
  return total < 0 ? parts.map((part) => (part === 0 ? 0 : -part)) : parts;
}

/** Gives `rest` away by ones; a share that floating point put a hair over a whole number may make it negative by one. */
function handOut(parts: number[], shares: readonly number[], rest: number): void {
  const order = shares
    .map((share, i) => ({ i, remainder: share - Math.floor(share), share }))
    .filter(({ share }) => share > 0)
    .sort((a, b) => Math.sign(rest) * (b.remainder - a.remainder) || a.i - b.i);
  for (let given = 0; given < Math.abs(rest); given++) {
    const next = order[given % order.length];
    if (next) parts[next.i] = (parts[next.i] ?? 0) + Math.sign(rest);
  }
}
