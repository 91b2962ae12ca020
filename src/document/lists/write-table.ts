import { stringify } from 'csv-stringify/sync';

/** Rows under their headings as CSV (RFC 4180); cells that a spreadsheet would run as formulas are guarded with '. */
export function writeTable(headings: readonly string[], rows: readonly (readonly string[])[]): string {
  return stringify([headings, ...rows], { escape_formulas: true, record_delimiter: 'windows' });
}
