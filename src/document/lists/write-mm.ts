import type { UnitSystem } from '../../domain/model.ts';
import { writeLength } from '../../domain/units/format-length.ts';
import { fromMm } from '../../domain/units/length.ts';

/** A length of the document as a cell that reads back as the same length; empty where there is none. */
export function writeMm(mm: number | undefined, units: UnitSystem): string {
  return mm === undefined ? '' : writeLength(fromMm(mm), units);
}
