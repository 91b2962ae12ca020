/** A label that wants to stand at `x`, centred, and is `width` wide. */
export interface LaneLabel {
  readonly x: number;
  readonly width: number;
}

/** Where it stands: row 0 is nearest to the drawing; a leader runs from `x` to `labelX`, then straight to the row. */
export interface PlacedLabel {
  readonly labelX: number;
  readonly row: number;
}

export interface Lane {
  readonly from: number;
  readonly to: number;
  /** Upright lines that no label may cover (rods, extension lines). */
  readonly obstacles: readonly number[];
  readonly rows: number;
}

export const LABEL_GAP = 5;
const LEADER_GAP = 3;
const ROW_COST = 9;

/**
 * Places labels in rows so that no two overlap, none covers another's leader and none covers an obstacle; leaders keep
 * the order of the labels, so they never cross. Units of the drawing. Answers in the order given. Where the lane is too
 * narrow the labels run past its end: the caller sees that with `overflow` and breaks the line earlier.
 */
export function placeLabels(labels: readonly LaneLabel[], lane: Lane): PlacedLabel[] {
  const rightwards = placeFromLeft(labels, lane);
  if (overflow(labels, rightwards, lane) === 0) return rightwards;
  const leftwards = placeFromLeft(labels.map(mirrored), mirroredLane(lane)).map(mirroredPlace);
  return overflow(labels, leftwards, lane) < overflow(labels, rightwards, lane) ? leftwards : rightwards;
}

/** How far the labels stand outside their lane, both ends together. */
export function overflow(labels: readonly LaneLabel[], placed: readonly PlacedLabel[], lane: Lane): number {
  let worst = 0;
  labels.forEach((label, index) => {
    const { labelX } = placed[index]!;
    worst = Math.max(worst, lane.from - (labelX - label.width / 2), labelX + label.width / 2 - lane.to);
  });
  return worst;
}

function placeFromLeft(labels: readonly LaneLabel[], lane: Lane): PlacedLabel[] {
  const placed = new Array<PlacedLabel>(labels.length);
  const rowEnd = new Array<number>(lane.rows).fill(Number.NEGATIVE_INFINITY);
  const lastLeader = new Array<number>(lane.rows).fill(Number.NEGATIVE_INFINITY);
  for (const index of inOrderOfX(labels)) {
    const label = labels[index]!;
    const best = cheapestRow(label, lane, rowEnd, lastLeader);
    rowEnd[best.row] = best.labelX + label.width / 2;
    lastLeader[best.row] = best.labelX;
    placed[index] = best;
  }
  return placed;
}

function inOrderOfX(labels: readonly LaneLabel[]): number[] {
  return labels.map((_, index) => index).sort((a, b) => labels[a]!.x - labels[b]!.x || a - b);
}

function cheapestRow(
  label: LaneLabel,
  lane: Lane,
  rowEnd: readonly number[],
  lastLeader: readonly number[],
): PlacedLabel {
  let best: PlacedLabel = { row: 0, labelX: Number.POSITIVE_INFINITY };
  let bestCost = Number.POSITIVE_INFINITY;
  for (let row = 0; row < lane.rows; row++) {
    const labelX = firstFreeX(label, row, lane, rowEnd, lastLeader);
    const cost = Math.abs(labelX - label.x) + row * ROW_COST;
    if (cost < bestCost) [best, bestCost] = [{ row, labelX }, cost];
  }
  return best;
}

function firstFreeX(
  label: LaneLabel,
  row: number,
  lane: Lane,
  rowEnd: readonly number[],
  lastLeader: readonly number[],
): number {
  const half = label.width / 2;
  let x = Math.max(label.x, lane.from + half, rowEnd[row]! + LABEL_GAP + half);
  for (let other = 0; other < lane.rows; other++) {
    if (other < row) x = Math.max(x, rowEnd[other]! + LEADER_GAP);
    if (other > row) x = Math.max(x, lastLeader[other]! + LEADER_GAP + half);
  }
  return pastObstacles(x, half, lane.obstacles);
}

function pastObstacles(start: number, half: number, obstacles: readonly number[]): number {
  let x = start;
  for (const obstacle of [...obstacles].sort((a, b) => a - b)) {
    if (Math.abs(obstacle - x) < half + LEADER_GAP) x = obstacle + half + LEADER_GAP;
  }
  return x;
}

const mirrored = (label: LaneLabel): LaneLabel => ({ x: -label.x, width: label.width });
const mirroredPlace = (place: PlacedLabel): PlacedLabel => ({ row: place.row, labelX: -place.labelX });
const mirroredLane = (lane: Lane): Lane => ({
  from: -lane.to,
  to: -lane.from,
  obstacles: lane.obstacles.map((x) => -x),
  rows: lane.rows,
});
