import { type Cell, readFigure } from '../lists/cell.ts';

/** A figure as the sheet writes it, exactly; or as people do, with a comma for thousands, `%` or `h` behind it. */
export function readNumber(text: string): Cell<number> {
  if (/^-?(\d+(\.\d*)?|\.\d+)(e[-+]?\d+)?$/i.test(text)) return { value: Number(text) };
  return readFigure({ '': 1, '%': 1, h: 1 }, 'a number, such as 0.6')(text);
}

/** Hours of one unit: a figure, with `h` behind it or without. */
export function readHours(text: string): Cell<number> {
  const [, hours, minutes] = /^(\d+):([0-5]\d)$/.exec(text) ?? [];
  if (hours !== undefined && minutes !== undefined) {
    const decimal = Number((Number(hours) + Number(minutes) / 60).toFixed(4));
    return { problem: `"${text}" is hours and minutes.`, remedy: `Write hours as a decimal: ${decimal}.` };
  }
  if (/%\s*$/.test(text))
    return {
      problem: `"${text.slice(0, 40)}" is a percentage, and hours are wanted.`,
      remedy: 'Give hours, such as 0.6.',
    };
  return readNumber(text);
}

/** The mark that guards what a spreadsheet would run as a formula, before the wide forms of its signs: off again. */
export function unguarded(text: string): string {
  return /^'[＝＋－＠]/.test(text) ? text.slice(1) : text;
}
