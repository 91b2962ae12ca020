import type { LengthRange } from '../../domain/units/parse-length.ts';
import { COORDINATE, DISTANCE, LEG, SIZE } from '../../domain/units/parse-length.ts';

/** How the text of one entry is read. */
export type Reading =
  | { readonly kind: 'text' }
  | { readonly kind: 'length'; readonly range: LengthRange }
  | { readonly kind: 'number' }
  | { readonly kind: 'weight' }
  | { readonly kind: 'tick' };

export interface EntryOf {
  /** Path in the run's document, which is also the name of the field. */
  readonly path: string;
  readonly reading: Reading;
}

const text = (path: string): EntryOf => ({ path, reading: { kind: 'text' } });
const length = (path: string, range: LengthRange): EntryOf => ({ path, reading: { kind: 'length', range } });
const number = (path: string): EntryOf => ({ path, reading: { kind: 'number' } });

/** Every entry of a run that stands once. */
export const SINGLE_ENTRIES: readonly EntryOf[] = [
  text('id'),
  text('level'),
  text('area'),
  text('type'),
  text('side'),
  text('pairedRun'),
  text('conductorSide'),
  length('start.xMm', COORDINATE),
  length('start.yMm', COORDINATE),
  length('start.zMm', COORDINATE),
  number('headingDeg'),
  text('feed.kind'),
  text('feed.fromRun'),
  length('feed.atMm', DISTANCE),
  text('feed.branchSide'),
  text('feed.supply'),
  number('feed.deviceA'),
  { path: 'feed.deviceHundredPercent', reading: { kind: 'tick' } },
  number('feed.faultKA'),
  number('feed.xOverR'),
  number('feed.terminations'),
  number('feed.cable.lengthM'),
  number('feed.cable.ohmPerKm.r'),
  number('feed.cable.ohmPerKm.x'),
  number('feed.cable.parallel'),
  number('feed.cable.neutralOhmPerKm.r'),
  number('feed.cable.neutralOhmPerKm.x'),
  length('end.reachMm', DISTANCE),
  length('end.hardStopMm', DISTANCE),
  text('structure.kind'),
  length('structure.pitchMm', SIZE),
  length('structure.offsetMm', COORDINATE),
  length('dropMm', DISTANCE),
  text('rod'),
  length('rodStockMm', SIZE),
  text('attachment'),
  { path: 'supportCapacityKg', reading: { kind: 'weight' } },
];

export type RowGroup = 'legs' | 'crossings' | 'noJoint' | 'noSupport';

/** Entries of what stands in rows, by the path within a row. */
export const ROW_ENTRIES: Readonly<Record<RowGroup, readonly EntryOf[]>> = {
  legs: [length('lengthMm', LEG), text('turn'), text('tapsMustFace')],
  crossings: [length('atMm', DISTANCE), length('thicknessMm', SIZE), text('kind'), number('fireRatingMin')],
  noJoint: [length('fromMm', DISTANCE), length('toMm', DISTANCE), text('reason')],
  noSupport: [length('fromMm', DISTANCE), length('toMm', DISTANCE), text('reason')],
};
export const ROW_GROUPS: readonly RowGroup[] = ['legs', 'crossings', 'noJoint', 'noSupport'];

/** `rowName('legs', 0, 'lengthMm') = 'legs[0].lengthMm'`. */
export function rowName(group: RowGroup, row: number, path: string): string {
  return `${group}[${row}].${path}`;
}

export type Entered = Readonly<Record<string, string>>;
