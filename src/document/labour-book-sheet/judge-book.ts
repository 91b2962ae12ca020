import type { Draft } from '../form/read-entry.ts';
import type { JobDocument } from '../job-document.ts';
import type { ListFault } from '../lists/list-fault.ts';
import { parseJobDocument } from '../parse-job-document.ts';
import type { BookColumn } from './columns.ts';

interface Place {
  readonly path: string;
  readonly row: number;
}

/** The job's own check of the book that was read, each fault at the row and cell that it came from. */
export function judgeBook(job: JobDocument, book: Draft, places: readonly Place[]): ListFault[] {
  const { runs: _runs, extras: _extras, bid: _bid, ...rest } = job;
  const parsed = parseJobDocument({ ...rest, runs: [], labourBook: book });
  if (parsed.ok) return [];
  return parsed.faults
    .filter(({ path }) => path.startsWith('labourBook'))
    .map(({ path, message, remedy }) => {
      const own = plainPath(path);
      const place = placeOf(own, places);
      const column = place === undefined ? own : columnOf(own.slice(place.path.length));
      return { row: place?.row ?? null, column, value: '', problem: message, remedy };
    });
}

/** `labourBook.activities["end-cap"].low` as the places write it: `activities.end-cap.low`. */
function plainPath(path: string): string {
  return path
    .replace(/^labourBook\.?/, '')
    .replace(/\["((?:[^"\\]|\\.)*)"\]/g, (_all, key: string) => `.${JSON.parse(`"${key}"`)}`);
}

/** The longest place that the path lies in. */
function placeOf(path: string, places: readonly Place[]): Place | undefined {
  return places
    .filter((place) => path === place.path || path.startsWith(`${place.path}.`) || path.startsWith(`${place.path}[`))
    .sort((a, b) => b.path.length - a.path.length)[0];
}

const COLUMNS: Readonly<Record<string, BookColumn>> = {
  unit: 'unit',
  low: 'low',
  likely: 'likely',
  high: 'high',
  upToA: 'rating',
  upToMm: 'length',
  overMm: 'length',
  percent: 'value',
  factors: 'conditions',
  role: 'name',
  name: 'name',
  activities: 'conditions',
  number: 'number',
  ratePerHour: 'rate',
  effectiveness: 'effectiveness',
  burdenPercent: 'burden',
};

function columnOf(rest: string): BookColumn {
  const key = /^\.?([A-Za-z]+)/.exec(rest)?.[1] ?? '';
  return COLUMNS[key] ?? 'value';
}
