import { parseMoney } from '../../domain/units/money.ts';
import type { Draft } from '../form/read-entry.ts';
import { type Cell, readText } from '../lists/cell.ts';
import { readNumber } from './number-cell.ts';
import { isFirst, lengthCell, onlyCells, type Reading, type Row, readListed } from './reading.ts';

/** What is added above a mounting height. */
export function readHeight(row: Row, reading: Reading): void {
  onlyCells(row, 'over height', ['length', 'value']);
  const overMm = row.need('length', lengthCell(reading));
  const percent = row.need('value', readNumber);
  reading.draft.factors ??= {};
  const factors = reading.draft.factors as Draft;
  factors.height ??= [];
  const height = factors.height as Draft[];
  reading.places.push({ path: `factors.height[${height.length}]`, row: row.row });
  height.push({ overMm, percent });
}

/** A condition of the whole job; in the cell of conditions stand the activities that feel it. */
export function readJobCondition(name: string, row: Row, reading: Reading): void {
  onlyCells(row, 'job condition', ['value', 'conditions']);
  if (!isFirst(`job condition ${name}`, row, reading)) return;
  const percent = row.need('value', readNumber);
  const activities = row.take('conditions', readListed(readText));
  reading.draft.jobConditions ??= [];
  const conditions = reading.draft.jobConditions as Draft[];
  reading.places.push({ path: `jobConditions[${conditions.length}]`, row: row.row });
  conditions.push({ name, percent, ...(activities === undefined ? {} : { activities }) });
}

/** One trade of the crew. */
export function readMember(role: string, row: Row, reading: Reading): void {
  onlyCells(row, 'crew', ['number', 'rate', 'effectiveness', 'burden']);
  const number = row.need('number', readNumber);
  const ratePerHour = row.need('rate', readRate(reading.project.currency));
  const effectiveness = row.need('effectiveness', readNumber);
  const burdenPercent = row.take('burden', readNumber);
  reading.draft.crew ??= [];
  const crew = reading.draft.crew as Draft[];
  reading.places.push({ path: `crew[${crew.length}]`, row: row.row });
  crew.push({ role, number, ratePerHour, effectiveness, ...(burdenPercent === undefined ? {} : { burdenPercent }) });
}

function readRate(currency: string): (text: string) => Cell<number> {
  return (text) => {
    const parsed = parseMoney(text, currency);
    return parsed.ok ? { value: parsed.minor } : parsed;
  };
}
