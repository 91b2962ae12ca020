import { stringify } from 'csv-stringify/sync';
import type { Readiness } from '../../domain/closeout/readiness.ts';
import { gapWords, ROW_WORDS } from '../../domain/closeout/words.ts';

/** Every gap on a row of its own, as the open items of the book name them together. */
export function openItemsRegister({ gaps }: Readiness): string {
  const rows = gaps.map((gap) => [gap.run, gap.mark, ROW_WORDS[gap.row].title, gapWords(gap.reason), gap.count]);
  return `\uFEFF${stringify([['run', 'what', 'asked for', 'missing', 'how many'], ...rows], { escape_formulas: true, record_delimiter: 'windows' })}`;
}
