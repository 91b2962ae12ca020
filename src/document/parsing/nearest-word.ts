/**
 * The word of `words` that `typed` was most likely meant to be: the same but for case and marks, one that begins with
 * it, or one within two slips of the keyboard. `nearestWord('length', ['lengthMm', 'turn']) = 'lengthMm'`.
 */
export function nearestWord(typed: string, words: readonly string[]): string | undefined {
  const wanted = plain(typed);
  if (wanted === '' || wanted.length > 40) return undefined;
  const alike = words.find((word) => plain(word) === wanted);
  if (alike) return alike;
  const longer = words.filter((word) => wanted.length >= 3 && plain(word).startsWith(wanted));
  if (longer.length === 1) return longer[0];
  const near = words
    .map((word) => ({ word, slips: slipsBetween(wanted, plain(word)) }))
    .sort((a, b) => a.slips - b.slips);
  const best = near[0];
  return best && best.slips <= Math.min(2, Math.floor(wanted.length / 3)) ? best.word : undefined;
}

function plain(word: string): string {
  return word.toLowerCase().replace(/[\s_.-]/g, '');
}

/** Levenshtein distance, one row at a time. */
function slipsBetween(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const swap = row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(swap, row[j]! + 1, next[j - 1]! + 1));
    }
    row = next;
  }
  return row[b.length]!;
}

/** As `nearestWord`, for the first few hundred times: a list in which nothing is known is not searched row by row. */
export function suggester(words: Iterable<string>): (typed: string) => string | undefined {
  const all = [...words];
  let left = 300;
  return (typed) => {
    left -= 1;
    return left < 0 ? undefined : nearestWord(typed, all);
  };
}
