import { writeMm } from '../../src/document/lists/write-mm.ts';
import type { BulkField } from '../../src/document/several/bulk-schema.ts';
import type { UnitSystem } from '../../src/domain/model.ts';

/** What a field that is changed on many runs is called. */
export const BULK_WORDS: Readonly<Record<BulkField, string>> = {
  level: 'Level',
  type: 'Busway type',
  area: 'Room or area',
  side: 'Feed side',
  conductorSide: 'Conductor side',
  elevationMm: 'Start, above the floor',
  supply: 'Supply',
  deviceA: 'Upstream device',
  faultKA: 'Fault current at the source',
  xOverR: 'X/R of the source',
  terminations: 'Conductors to terminate',
  structure: 'Structure carries a hanger',
  end: 'End of the last leg',
  dropMm: 'Rod for each hanger',
  rod: 'Rod',
  rodStockMm: 'Rod is bought in lengths of',
  attachment: 'Held to the structure by',
  supportCapacityKg: 'One hanger may carry',
};

const UNITS: Partial<Record<BulkField, string>> = { deviceA: 'A', faultKA: 'kA', supportCapacityKg: 'kg' };

/** A value of such a field in words. `bulkValueWords('rod', null, 'ft-in') = 'not stated'`. */
export function bulkValueWords(field: BulkField, value: unknown, units: UnitSystem): string {
  if (field === 'end') return endWords(value, units);
  if (value === null || value === undefined) return 'not stated';
  if (field === 'structure') return structureWords(value, units);
  if (typeof value === 'number' && field.endsWith('Mm')) return writeMm(value, units);
  if (field === 'side') return `${String(value)}-side`;
  const unit = UNITS[field];
  return unit === undefined ? String(value) : `${String(value)} ${unit}`;
}

function structureWords(value: unknown, units: UnitSystem): string {
  const { kind, pitchMm, offsetMm } = value as { kind: string; pitchMm?: number; offsetMm?: number };
  if (kind !== 'grid') return 'anywhere';
  return `on lines every ${writeMm(pitchMm, units)}, the first at ${writeMm(offsetMm, units)}`;
}

function endWords(value: unknown, units: UnitSystem): string {
  if (value === null || value === undefined) return 'exactly as drawn';
  const { shortMm, longMm } = value as { shortMm: number; longMm: number };
  return `up to ${writeMm(shortMm, units)} short, ${writeMm(longMm, units)} long`;
}
