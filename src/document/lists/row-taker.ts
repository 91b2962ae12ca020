import type { Cell } from './cell.ts';
import type { ListFault } from './list-fault.ts';
import type { Table, TableRow } from './read-table.ts';

/** What is noted while a list is read: what bars it, and what is asked about. */
export interface ListLog {
  readonly faults: ListFault[];
  readonly questions: ListFault[];
}

export interface RowTaker<Name extends string> {
  readonly row: number;
  /** What the cell says; undefined where it is empty, or wrong, which is noted. */
  take<T>(name: Name, read: (text: string) => Cell<T>): T | undefined;
  /** As `take`, and an empty cell is wrong. */
  need<T>(name: Name, read: (text: string) => Cell<T>): T | undefined;
  /** The cell as it stands. */
  text(name: Name): string;
  refuse(name: Name, problem: string, remedy: string): void;
}

/** Reads the cells of one row and notes what is wrong with each, so that a person sees all of it at once. */
export function rowTaker<Name extends string>(
  table: Table<Name>,
  { row, cells }: TableRow,
  log: ListLog,
): RowTaker<Name> {
  const text = (name: Name) => (cells[table.columns.get(name)?.index ?? -1] ?? '').trim();
  const refuse = (name: Name, problem: string, remedy: string) => {
    log.faults.push({ row, column: name, value: text(name), problem, remedy });
  };
  const take = <T>(name: Name, read: (text: string) => Cell<T>) => {
    const raw = text(name);
    if (raw === '') return undefined;
    const cell = refusalOfSpreadsheet(raw) ?? read(withoutGuard(raw));
    if ('problem' in cell) {
      refuse(name, cell.problem, cell.remedy);
      return undefined;
    }
    if (cell.question !== undefined) log.questions.push(questionAt(row, name, raw, cell.question));
    return cell.value;
  };
  const need = <T>(name: Name, read: (text: string) => Cell<T>) => {
    if (text(name) === '') refuse(name, `${name} is empty.`, 'Fill the cell, or take the row out.');
    return take(name, read);
  };
  return { row, take, need, text, refuse };
}

/** Formulas, and the marks that spreadsheets leave where one failed, are no values. */
function refusalOfSpreadsheet(raw: string): { problem: string; remedy: string } | undefined {
  if (raw.startsWith('=')) {
    return { problem: 'The cell holds a formula.', remedy: 'Paste its value: copy, then paste as values only.' };
  }
  if (/^#(REF|N\/A|VALUE|NAME|DIV\/0|NUM|NULL|SPILL)[!?]?/i.test(raw)) {
    return {
      problem: 'The cell holds an error of the spreadsheet.',
      remedy: 'Put the formula right there, then paste its value.',
    };
  }
  if (/^#{3,}$/.test(raw)) {
    return {
      problem: 'The column was too narrow to show the cell.',
      remedy: 'Widen the column in the spreadsheet and copy again.',
    };
  }
  return undefined;
}

/** Lists are written with ' before what a spreadsheet would take for a formula; here it comes off again. */
function withoutGuard(raw: string): string {
  return /^'[=+\-@]/.test(raw) ? raw.slice(1) : raw;
}

function questionAt(row: number, column: string, value: string, problem: string): ListFault {
  return {
    row,
    column,
    value,
    problem,
    remedy: 'It is taken as it stands; correct the cell if it was meant otherwise.',
  };
}

export function inRowOrder(faults: readonly ListFault[]): ListFault[] {
  return [...faults].sort((a, b) => (a.row ?? 0) - (b.row ?? 0));
}
