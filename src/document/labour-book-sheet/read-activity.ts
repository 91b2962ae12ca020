import { ACTIVITIES } from '../../domain/labour/result.ts';
import type { Draft } from '../form/read-entry.ts';
import { FACTOR_NAMES } from '../labour-book-form/entries.ts';
import { readFigure, readOneOf, readText } from '../lists/cell.ts';
import { nearestWord } from '../parsing/nearest-word.ts';
import { sayValue } from '../parsing/say.ts';
import { unguarded } from './number-cell.ts';
import { isFirst, lengthCell, ofHours, onlyCells, type Reading, type Row, readListed } from './reading.ts';

const readAmperes = readFigure({ '': 1, a: 1 }, 'a rated current in amperes, such as 250');

/** The hours of one unit of an activity. */
export function readActivity(id: string, row: Row, reading: Reading): void {
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

/** Its hours for pieces up to a length, or for busway up to a rated current, of which pieces up to a length may be a part. */
export function readBand(part: 'by length' | 'by rating', id: string, row: Row, reading: Reading): void {
  const isRated = part === 'by rating';
  onlyCells(row, part, [...(isRated ? (['rating'] as const) : []), 'length', 'low', 'likely', 'high']);
  const upToA = isRated ? row.need('rating', readAmperes) : undefined;
  const upToMm = isRated ? row.take('length', lengthCell(reading)) : row.need('length', lengthCell(reading));
  const activities = reading.draft.activities as Draft;
  if (!Object.hasOwn(activities, id)) {
    row.refuse(
      'name',
      `No row above gives the activity ${sayValue(id)}.`,
      'Put the row of the activity before its lengths and ratings.',
    );
    return;
  }
  const activity = activities[id] as Draft;
  activity.bands ??= [];
  const bands = activity.bands as Draft[];
  reading.places.push({ path: `${pathOf(id)}.bands[${bands.length}]`, row: row.row });
  bands.push({
    ...(upToA === undefined ? {} : { upToA }),
    ...(upToMm === undefined ? {} : { upToMm }),
    ...ofHours(row),
  });
}

function pathOf(id: string): string {
  return `activities.${id}`;
}
