import type { Box } from '../scale.ts';
import { textWidth } from '../text-width.ts';

export interface NamePlace {
  readonly text: string;
  /** Where the run begins. */
  readonly x: number;
  readonly y: number;
  /** Which way it heads on the drawing, so that its name stands behind its beginning. */
  readonly goesRight: 'yes' | 'no';
}

export interface PlacedName extends NamePlace {
  readonly box: Box;
  readonly moved: number;
}

/** Names of runs beside their beginnings, pushed down where they would lie on one another. */
export function placeNames(names: readonly NamePlace[], size: number): PlacedName[] {
  const placed: PlacedName[] = [];
  for (const name of [...names].sort((a, b) => a.y - b.y || a.x - b.x)) {
    const width = textWidth(name.text, size);
    const x = name.goesRight === 'yes' ? name.x - 14 - width : name.x + 14;
    let y = name.y - size / 2 - 1;
    const box = () => ({ x, y, width, height: size + 2 });
    for (let other = meeting(placed, box()); other; other = meeting(placed, box())) y = other.box.y + other.box.height;
    placed.push({ ...name, box: box(), moved: y - (name.y - size / 2 - 1) });
  }
  return placed;
}

function meeting(placed: readonly PlacedName[], box: Box): PlacedName | undefined {
  return placed.find(
    ({ box: other }) =>
      other.x < box.x + box.width &&
      box.x < other.x + other.width &&
      other.y < box.y + box.height &&
      box.y < other.y + other.height,
  );
}
