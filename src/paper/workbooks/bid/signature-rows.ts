import type { Cell } from '../table-sheet.ts';

/** Rows to sign on, an empty one before them: what is to be signed, and a line to write on in the last of so many columns. */
export function signatureRows(under: readonly string[], columns: number): readonly (readonly Cell[])[] {
  const rowOf = (words: string | null, line: string | null): Cell[] => [
    words,
    ...Array.from({ length: columns - 2 }, () => null),
    line,
  ];
  return [rowOf(null, null), ...under.map((words) => rowOf(words, LINE))];
}

const LINE = '_'.repeat(40);
