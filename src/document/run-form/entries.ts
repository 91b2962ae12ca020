import { COORDINATE, DISTANCE, LEG, SIZE } from '../../domain/units/parse-length.ts';
import { type EntryOf, length, number, text, tick, weight } from '../form/entries.ts';

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
  tick('feed.deviceHundredPercent'),
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
  weight('supportCapacityKg'),
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
