import { put } from '../form/read-entry.ts';
import { type Cell, readText } from '../lists/cell.ts';
import { nearestWord } from '../parsing/nearest-word.ts';
import { sayList, sayValue } from '../parsing/say.ts';
import type { Part } from './columns.ts';
import { readNumber, unguarded } from './number-cell.ts';
import { isFirst, onlyCells, type Reading, type Row, readListed } from './reading.ts';
import { CURRENCY, SINGLE_VALUES } from './single-values.ts';

/** A row with one value, by its part and name. */
export function readSingle(part: Part, name: string, row: Row, reading: Reading): void {
  onlyCells(row, part, ['value']);
  const entries = SINGLE_VALUES.filter((entry) => entry.part === part);
  const plain = (text: string) => text.toLowerCase().replace(/[^a-z]/g, '');
  const isCurrency = part === 'book' && plain(name) === CURRENCY;
  const entry = entries.find((one) => plain(one.name) === plain(name));
  if (entry === undefined && !isCurrency) {
    const names = entries.map((one) => one.name);
    const meant = nearestWord(name, names);
    row.refuse(
      'name',
      `The part ${part} has no ${sayValue(name)}.`,
      meant ? `Did you mean ${meant}?` : `It has ${sayList(names, 'and')}.`,
    );
    return;
  }
  if (!isFirst(`${part} ${entry?.path ?? CURRENCY}`, row, reading)) return;
  if (entry === undefined) {
    readCurrency(row, reading.project.currency);
    return;
  }
  const { path, kind } = entry;
  reading.places.push({ path, row: row.row });
  const read = {
    number: readNumber,
    text: (text: string) => readText(unguarded(text)),
    activities: readListed(readText),
  };
  put(reading.draft, path, row.need('value', read[kind] as (text: string) => Cell<unknown>));
}

/** Rates of another currency are other money: they are refused rather than taken for the job's. */
function readCurrency(row: Row, currency: string): void {
  const stated = row.need('value', readText);
  if (stated === undefined || stated.toUpperCase() === currency) return;
  const remedy = `Give the crew’s rates in ${currency}, and write ${currency} here.`;
  row.refuse('value', `The rates are in ${sayValue(stated)}, and the job’s money is ${currency}.`, remedy);
}
