import type { Length } from '../../../src/domain/units/length.ts';
import { clipLine } from '../plan/clip.ts';
import type { PlanRun, Window } from '../plan/props.ts';

export interface Tile {
  readonly column: number;
  readonly row: number;
  readonly window: Window;
  /** 1 for the first sheet. */
  readonly sheet: number;
}

/**
 * A level cut into windows of one size that touch, from the north-west, row by row; those that no run passes are left out.
 * The windows together stand round the middle of the level.
 */
export function planTiles(extent: Window, width: Length, height: Length, runs: readonly PlanRun[]): Tile[] {
  const columns = Math.max(1, Math.ceil((extent.right - extent.left) / width));
  const rows = Math.max(1, Math.ceil((extent.high - extent.low) / height));
  const left = (extent.left + extent.right - columns * width) / 2;
  const high = (extent.low + extent.high + rows * height) / 2;
  const tiles: Tile[] = [];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const window = {
        left: left + column * width,
        right: left + (column + 1) * width,
        high: high - row * height,
        low: high - (row + 1) * height,
      };
      if (runs.some((run) => passes(run, window))) tiles.push({ column, row, window, sheet: tiles.length + 1 });
    }
  }
  return tiles;
}

/** The sheet on that side, where there is one. */
export function besideTile(tiles: readonly Tile[], { column, row }: Tile, right: number, down: number): Tile | null {
  return tiles.find((tile) => tile.column === column + right && tile.row === row + down) ?? null;
}

function passes({ path }: PlanRun, { left, right, low, high }: Window): boolean {
  const box = { x: left, y: low, width: right - left, height: high - low };
  return path.slice(1).some((point, index) => {
    const before = path[index]!;
    return clipLine([before.x, before.y], [point.x, point.y], box) !== null;
  });
}
