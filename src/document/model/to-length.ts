import { fromMm, type Length } from '../../domain/units/length.ts';

/** An optional figure in mm to a length; absent stays unknown. */
export function lengthOrNull(mm: number | undefined): Length | null {
  return mm === undefined ? null : fromMm(mm);
}
