import { ACTIVITIES } from '../../domain/labour/result.ts';
import { parseMoney } from '../../domain/units/money.ts';
import { DISTANCE } from '../../domain/units/parse-length.ts';
import { type Draft, put } from '../form/read-entry.ts';
import { FACTOR_NAMES } from '../labour-book-form/entries.ts';
import { type Cell, readEach, readLengthCell, readOneOf, readText } from '../lists/cell.ts';
import type { Table } from '../lists/read-table.ts';
import type { RowTaker } from '../lists/row-taker.ts';
import { nearestWord } from '../parsing/nearest-word.ts';
import { sayList, sayValue } from '../parsing/say.ts';
import { type BookProject, NONE } from './book-rows.ts';
import { BOOK_COLUMNS, type BookColumn, PARTS, type Part } from './columns.ts';
import { readNumber, unguarded } from './number-cell.ts';
import { CURRENCY, SINGLE_VALUES } from './single-values.ts';

type Row = RowTaker<BookColumn>;

/** What the reading of a sheet gathers. */
export interface Reading {
  readonly table: Table<BookColumn>;
  readonly project: BookProject;
  readonly draft: Draft;
  /** Where each part of the document was read, so that its own check can name the row. */
  readonly places: { readonly path: string; readonly row: number }[];
  /** The row that named a thing first. */
  readonly seen: Map<string, number>;
}

/** Puts what one row says into the book, and notes what is wrong with its cells. */
export function readBookRow(row: Row, reading: Reading): void {
  const part = row.need('part', readOneOf(PARTS));
  const name = row.need('name', (text) => readText(unguarded(text)));
  if (part === undefined || name === undefined) return;
  if (part === 'activity') readActivity(name, row, reading);
  else if (part === 'by length') readBand(name, row, reading);
  else if (part === 'over height') readHeight(row, reading);
  else if (part === 'crew') readMember(name, row, reading);
  else readSingle(part, name, row, reading);
}

/** Notes where a thing stands, and refuses it where it stands already. */
function isFirst(key: string, row: Row, { seen }: Reading): boolean {
  const before = seen.get(key);
  if (before === undefined) {
    seen.set(key, row.row);
    return true;
  }
  row.refuse('name', `This stands in row ${before} already.`, 'Keep the row that holds, and take the other out.');
  return false;
}

function onlyCells(row: Row, part: string, allowed: readonly BookColumn[]): void {
  for (const column of Object.keys(BOOK_COLUMNS.names) as BookColumn[]) {
    if (column === 'part' || column === 'name' || allowed.includes(column) || row.text(column) === '') continue;
    const remedy = `Empty it: a row of ${part} has ${sayList(allowed, 'and')} alone.`;
    row.refuse(column, `A row of ${part} has no ${column}.`, remedy);
  }
}

const ofHours = (row: Row) => ({
  low: row.need('low', readNumber),
  likely: row.need('likely', readNumber),
  high: row.need('high', readNumber),
});

function readActivity(id: string, row: Row, reading: Reading): void {
  onlyCells(row, 'activity', ['unit', 'low', 'likely', 'high', 'conditions']);
  if (!isFirst(`activity ${id}`, row, reading)) return;
  const known: readonly string[] = ACTIVITIES;
  if (!known.includes(id)) {
    const meant = nearestWord(id, ACTIVITIES);
    row.take('name', () => ({
      value: id,
      question: `${sayValue(id)} is not one of the ${ACTIVITIES.length} activities, so its hours count nowhere.${meant ? ` Did you mean ${meant}?` : ''}`,
    }));
  }
  const unit = row.need('unit', (text) => readText(unguarded(text)));
  const conditions = row.take('conditions', readListed(readOneOf(FACTOR_NAMES)));
  const activities = reading.draft.activities as Draft;
  const bands = (activities[id] as Draft | undefined)?.bands;
  // A key of any name, `__proto__` included, becomes the object's own.
  Object.defineProperty(activities, id, {
    value: {
      unit,
      ...ofHours(row),
      ...(bands === undefined ? {} : { bands }),
      ...(conditions === undefined ? {} : { factors: conditions }),
    },
    enumerable: true,
    configurable: true,
    writable: true,
  });
  reading.places.push({ path: pathOf(id), row: row.row });
}

function readBand(id: string, row: Row, reading: Reading): void {
  onlyCells(row, 'by length', ['length', 'low', 'likely', 'high']);
  const upToMm = row.need('length', lengthCell(reading));
  const activities = reading.draft.activities as Draft;
  if (!Object.hasOwn(activities, id)) {
    row.refuse(
      'name',
      `No row above gives the activity ${sayValue(id)}.`,
      'Put the row of the activity before its lengths.',
    );
    return;
  }
  const activity = activities[id] as Draft;
  activity.bands ??= [];
  const bands = activity.bands as Draft[];
  reading.places.push({ path: `${pathOf(id)}.bands[${bands.length}]`, row: row.row });
  bands.push({ upToMm, ...ofHours(row) });
}

function readHeight(row: Row, reading: Reading): void {
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

function readMember(role: string, row: Row, reading: Reading): void {
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

function readSingle(part: Part, name: string, row: Row, reading: Reading): void {
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

function lengthCell({ table, project }: Reading) {
  return readLengthCell(project.units, table.columns.get('length')?.unit ?? null, DISTANCE);
}

function readRate(currency: string): (text: string) => Cell<number> {
  return (text) => {
    const parsed = parseMoney(text, currency);
    return parsed.ok ? { value: parsed.minor } : parsed;
  };
}

function readListed<T>(read: (text: string) => Cell<T>): (text: string) => Cell<T[]> {
  return (text) => (text.toLowerCase() === NONE ? { value: [] } : readEach(read)(text));
}

function pathOf(id: string): string {
  return `activities.${id}`;
}
