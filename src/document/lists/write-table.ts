import { stringify } from 'csv-stringify/sync';

/** Rows under their headings as CSV (RFC 4180); cells that a spreadsheet would run as formulas are guarded with '. */
export function writeTable(headings: readonly string[], rows: readonly (readonly string[])[]): string {
  return writeRows([headings, ...rows]);
}

/** The same without headings, for what follows them in a list too long for one piece. */
export function writeRows(rows: readonly (readonly string[])[]): string {
  return stringify([...rows], { escape_formulas: true, record_delimiter: 'windows' });
}
