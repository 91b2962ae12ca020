import { type Cell, readFigure } from '../lists/cell.ts';

/** A figure as the sheet writes it, exactly; or as people do, with a comma for thousands, `%` or `h` behind it. */
export function readNumber(text: string): Cell<number> {
  if (/^-?(\d+(\.\d*)?|\.\d+)(e[-+]?\d+)?$/i.test(text)) return { value: Number(text) };
  return readFigure({ '': 1, '%': 1, h: 1 }, 'a number, such as 0.6')(text);
}

/** The mark that guards what a spreadsheet would run as a formula, before the wide forms of its signs: off again. */
export function unguarded(text: string): string {
  return /^'[＝＋－＠]/.test(text) ? text.slice(1) : text;
}
