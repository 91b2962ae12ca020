import type { Length } from '../units/length.ts';
import type { LoadLine } from './load-line.ts';
import { loadSums, onFarEnd, onNearEnd } from './load-sums.ts';

/**
 * What each support carries when every span rests freely on its two supports, kg: the lever rule for everything between, and
 * each overhang wholly on the end support. Supports in ascending order. Statics; of a uniform w over spans L this is wL inside.
 */
export function simpleSpanLoads(line: LoadLine, supports: readonly Length[]): readonly number[] {
  const sums = loadSums(line, supports);
  const last = supports.length - 1;
  return supports.map((_, index) => {
    const before = index === 0 ? (sums.kg[0] ?? 0) : onFarEnd(sums, index - 1, index);
    const after = index === last ? sums.total - (sums.kg[last] ?? 0) : onNearEnd(sums, index, index + 1);
    return before + after;
  });
}
