import { RODS, type RunDocument, TURNS } from '../schema/run.ts';
import { type Cell, readEach, readOneOf } from './cell.ts';
import type { RunColumn } from './columns.ts';
import type { RowTaker } from './row-taker.ts';

type Row = RowTaker<RunColumn>;
type ReadLength = (text: string) => Cell<number>;

export function readSide(text: string): Cell<'A' | 'B'> {
  if (/^L[123]$/i.test(text)) return { problem: `"${text}" is a phase.`, remedy: 'Feed sides are A and B.' };
  return readOneOf(['A', 'B'])(text.replace(/[- ]?side$/i, ''));
}

export function readRod(text: string): Cell<(typeof RODS)[number]> {
  const isDate =
    /^\d{1,2}[-/ ](jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)/i.test(text) ||
    /^\d{1,4}[-/]\d{1,2}[-/]\d{1,4}$/.test(text);
  if (isDate) {
    const remedy = 'Format the column as text in the spreadsheet, and write 3/8 again.';
    return { problem: `${text} is a date: the spreadsheet made one of a fraction.`, remedy };
  }
  return readOneOf(RODS)(text.replace(/\s*(in|inch|")$/i, ''));
}

/** The start has all three coordinates or none. */
export function readStart(row: Row, length: (name: 'x' | 'y' | 'z') => ReadLength) {
  const axes = (['x', 'y', 'z'] as const).map((name) => ({
    name,
    mm: row.take(name, length(name)),
    text: row.text(name),
  }));
  const given = axes.filter(({ text }) => text !== '');
  if (given.length > 0 && given.length < axes.length) {
    for (const { name, text } of axes) {
      if (text === '')
        row.refuse(name, `${name} is empty, though the start has another coordinate.`, 'Give x, y and z, or none.');
    }
  }
  const [x, y, z] = axes;
  if (x?.mm === undefined || y?.mm === undefined || z?.mm === undefined) return undefined;
  return { xMm: x.mm, yMm: y.mm, zMm: z.mm };
}

/** The legs of a run: lengths and, for each corner, a turn. */
export function readLegs(row: Row, length: ReadLength): RunDocument['legs'] {
  const lengths = row.need('leg lengths', readEach(length)) ?? [];
  const turns = row.take('turns', readEach(readOneOf(TURNS)));
  if (lengths.length > 0 && !areEnough(turns, lengths.length, row.text('turns'))) {
    const problem = `The run has ${sayCount(lengths.length, 'leg')} and ${sayCount(turns?.length ?? 0, 'turn')}.`;
    row.refuse('turns', problem, 'Give one turn for each corner between two legs, separated by ;');
  }
  return lengths.map((lengthMm, i) => ({ lengthMm, turn: turns?.[i] ?? 'none' }));
}

/** One turn for each corner, and perhaps a `none` for the end; a cell that could not be read has its own fault. */
function areEnough(turns: readonly string[] | undefined, legs: number, text: string): boolean {
  if (turns === undefined) return text !== '' || legs === 1;
  return turns.length === legs - 1 || (turns.length === legs && turns.at(-1) === 'none');
}

function sayCount(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}
