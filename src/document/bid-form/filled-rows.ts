import type { Entered } from '../form/entries.ts';

/**
 * Rows of a group in which anything was typed, by their place in the form; a row that is to be removed is none. Choices that
 * an empty row has as well do not count. `filledRows({ 'taxes[2].name': 'State' }, 'taxes', []) = [2]`.
 */
export function filledRows(entered: Entered, group: string, choices: readonly string[]): readonly number[] {
  const rows = new Set<number>();
  for (const [field, text] of Object.entries(entered)) {
    if (!field.startsWith(`${group}[`) || text.trim() === '') continue;
    const [, row = '', name = ''] = /^(\d{1,3})\]\.(.+)$/.exec(field.slice(group.length + 1)) ?? [];
    const own = name.replace(/^.*\]\./, '');
    if (row !== '' && !choices.includes(own)) rows.add(Number(row));
  }
  return [...rows].filter((row) => (entered[`${group}[${row}].remove`] ?? '') === '').sort((a, b) => a - b);
}
