import type { BuswayType } from '../model.ts';

/** How a finding names the sheet it speaks from: "sheet of demo-250A (D-17 rev B)". */
export function sheetName(type: BuswayType): string {
  if (type.sheet === null) return `sheet of ${type.id}, as entered (document not named)`;
  return `sheet of ${type.id} (${type.sheet.document} rev ${type.sheet.revision})`;
}
