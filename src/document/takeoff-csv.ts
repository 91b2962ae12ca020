import type { UnitSystem } from '../domain/model.ts';
import type { TakeoffLine } from '../domain/takeoff/result.ts';
import { formatLength } from '../domain/units/format-length.ts';
import { toMm } from '../domain/units/length.ts';
import { writeTable } from './lists/write-table.ts';

const HEADINGS = [
  'level',
  'run',
  'item',
  'kind',
  'hand',
  'busway type',
  'length',
  'length mm',
  'quantity',
  'unit',
  'places',
];

/** Takeoff lines as CSV; the places of a line are the distances along its run it was counted from, separated by `;`. */
export function takeoffCsv(lines: readonly TakeoffLine[], units: UnitSystem): string {
  return writeTable(
    HEADINGS,
    lines.map((line) => [
      line.level ?? '',
      line.run ?? '',
      line.item,
      line.kind ?? '',
      line.hand ?? '',
      line.type ?? '',
      line.length === null ? '' : formatLength(line.length, units),
      line.length === null ? '' : String(toMm(line.length)),
      String(line.quantity),
      line.unit,
      line.places.map((at) => formatLength(at, units)).join('; '),
    ]),
  );
}
