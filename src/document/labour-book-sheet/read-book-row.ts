import { readOneOf, readText } from '../lists/cell.ts';
import { PARTS } from './columns.ts';
import { unguarded } from './number-cell.ts';
import { readActivity, readBand } from './read-activity.ts';
import { readHeight, readJobCondition, readMember } from './read-repeated.ts';
import { readSingle } from './read-single.ts';
import type { Reading, Row } from './reading.ts';

/** Puts what one row says into the book, and notes what is wrong with its cells. */
export function readBookRow(row: Row, reading: Reading): void {
  const part = row.need('part', readOneOf(PARTS));
  const name = row.need('name', (text) => readText(unguarded(text)));
  if (part === undefined || name === undefined) return;
  if (part === 'activity') readActivity(name, row, reading);
  else if (part === 'by length' || part === 'by rating') readBand(part, name, row, reading);
  else if (part === 'over height') readHeight(row, reading);
  else if (part === 'job condition') readJobCondition(name, row, reading);
  else if (part === 'crew') readMember(name, row, reading);
  else readSingle(part, name, row, reading);
}
