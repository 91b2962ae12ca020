import { parseMoney } from '../../domain/units/money.ts';
import type { Draft } from '../form/read-entry.ts';
import type { Cell } from '../lists/cell.ts';
import { readNumber } from './number-cell.ts';
import { lengthCell, onlyCells, type Reading, type Row } from './reading.ts';

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
