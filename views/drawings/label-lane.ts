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
/** What a row farther out costs in width; less where labels would otherwise run past the end. */
const ROW_COSTS = [9, 2, 0.2];

/**
 * Places labels in rows so that no two overlap, none covers another's leader and none covers an obstacle; leaders keep
 * the order of the labels, so they never cross. Units of the drawing. Answers in the order given. Where the lane is too
 * narrow the labels run past its end: the caller sees that with `overflow` and breaks the line earlier.
 */
export function placeLabels(labels: readonly LaneLabel[], lane: Lane): PlacedLabel[] {
  let best: PlacedLabel[] = [];
  let least = Number.POSITIVE_INFINITY;
  for (const rowCost of ROW_COSTS) {
    for (const place of [placeFromLeft, placeFromRight, placeFromBoth]) {
      const placed = place(labels, lane, rowCost);
      const over = overflow(labels, placed, lane);
      if (over === 0) return placed;
      if (over < least) [best, least] = [placed, over];
    }
  }
  return best;
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

function placeFromRight(labels: readonly LaneLabel[], lane: Lane, rowCost: number): PlacedLabel[] {
  return placeFromLeft(labels.map(mirrored), mirroredLane(lane), rowCost).map(mirroredPlace);
}

/** The left half from the left end and the right half from the right; as from the left where the halves would meet. */
function placeFromBoth(labels: readonly LaneLabel[], lane: Lane, rowCost: number): PlacedLabel[] {
  const middle = (lane.from + lane.to) / 2;
  const fromLeft = placeFromLeft(
    labels.filter((label) => label.x < middle),
    lane,
    rowCost,
  );
  const fromRight = placeFromRight(
    labels.filter((label) => label.x >= middle),
    lane,
    rowCost,
  );
  const placed = labels.map((label) => (label.x < middle ? fromLeft : fromRight).shift()!);
  const ends = (left: boolean) =>
    labels.flatMap(({ x, width }, i) => (x < middle === left ? [placed[i]!.labelX + (left ? width : -width) / 2] : []));
  const meet = Math.max(...ends(true)) + LABEL_GAP > Math.min(...ends(false));
  return meet ? placeFromLeft(labels, lane, rowCost) : placed;
}

function placeFromLeft(labels: readonly LaneLabel[], lane: Lane, rowCost: number): PlacedLabel[] {
  const placed = new Array<PlacedLabel>(labels.length);
  const rowEnd = new Array<number>(lane.rows).fill(Number.NEGATIVE_INFINITY);
  const lastLeader = new Array<number>(lane.rows).fill(Number.NEGATIVE_INFINITY);
  for (const index of inOrderOfX(labels)) {
    const label = labels[index]!;
    const best = cheapestRow(label, lane, rowEnd, lastLeader, rowCost);
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
  rowCost: number,
): PlacedLabel {
  let best: PlacedLabel = { row: 0, labelX: Number.POSITIVE_INFINITY };
  let bestCost = Number.POSITIVE_INFINITY;
  for (let row = 0; row < lane.rows; row++) {
    const labelX = firstFreeX(label, row, lane, rowEnd, lastLeader);
    const cost = Math.abs(labelX - label.x) + row * rowCost;
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
