import type { UnitSystem } from '../../../src/domain/model.ts';
import type { Length } from '../../../src/domain/units/length.ts';
import { type Band, bandsOf } from './bands.ts';
import { type FacingSpan, facingAt } from './facing-spans.ts';
import { type DrawnLabel, fillLane } from './fill-lane.ts';
import { endsOf, type LineEnds } from './line-ends.ts';
import type { Stretch } from './lines.ts';
import { BODY, CLAMP, FAN, HEADING, MARGIN, ROD, ROW, TAP } from './metrics.ts';
import { boxOf, cutsPiece, type DrawnThing, isOnLine } from './place-things.ts';
import type { StripRun } from './props.ts';
import type { Thing } from './things.ts';
import { aboveWishes, endWishes, jointWishes, type LineContent, ofKind, pieceWishes, tapWishes } from './wishes.ts';

export interface LineRequest {
  readonly stretch: Stretch;
  readonly scale: number;
  readonly width: number;
  readonly things: readonly Thing[];
  readonly facing: readonly FacingSpan[];
  readonly run: StripRun;
  readonly units: UnitSystem;
  readonly length: Length;
  readonly heading: string;
}

export type { DrawnThing };

/** One line of the strip in drawing units, its top at 0. */
export interface LinePlan extends LineEnds {
  readonly stretch: Stretch;
  readonly heading: string;
  readonly height: number;
  readonly tapsAbove: boolean;
  /** Where taps face at the start of the line. */
  readonly facing: string | null;
  readonly structureY: number;
  readonly bodyY: number;
  readonly dimensionY: number;
  readonly startX: number;
  readonly endX: number;
  readonly things: readonly DrawnThing[];
  readonly labels: readonly DrawnLabel[];
  readonly bands: readonly Band[];
  readonly ticks: readonly number[];
  /** The line begins or ends inside a piece. */
  readonly brokenLeft: boolean;
  readonly brokenRight: boolean;
  readonly overflow: number;
  readonly farthestLabel: number;
}

export function planLine(request: LineRequest): LinePlan {
  const { stretch, width, length, run } = request;
  const line = contentOf(request);
  const { here, toX } = line;
  const marks = ofKind(here, 'joint').map((thing) => toX(thing.from));
  const rods = ofKind(here, 'support').map((thing) => toX(thing.from));
  const ticks = [...new Set([...marks, toX(stretch.from), toX(stretch.to)])].sort((a, b) => a - b);
  const ends = endsOf(line);
  const tapsAbove = run.conductorSide === 'left';

  const above = fillLane([...aboveWishes(line), ...endWishes(run, ends.feed?.x ?? null, ends.capXs)], width, []);
  const taps = fillLane(tapWishes(line), width, tapsAbove ? rods : ticks);
  const pieces = fillLane(pieceWishes(line), width, []);
  const joints = fillLane(jointWishes(line), width, []);
  const lanes = [above, taps, pieces, joints];

  const tapRoom = TAP.height + FAN + Math.max(taps.rows, 1) * ROW + 4;
  const structureY = HEADING + above.rows * ROW + FAN;
  const bodyY = structureY + (tapsAbove ? Math.max(ROD, tapRoom + 8, 58) : ROD);
  const dimensionY = bodyY + BODY + CLAMP.reach + (tapsAbove ? 6 : tapRoom) + pieces.rows * ROW + FAN;
  const outwards = tapsAbove ? -1 : 1;
  const tapEdge = tapsAbove ? bodyY - TAP.height : bodyY + BODY + TAP.height;

  return {
    ...ends,
    stretch,
    heading: request.heading,
    height: dimensionY + FAN + joints.rows * ROW + 16,
    tapsAbove,
    facing: facingAt(request.facing, stretch.from),
    structureY,
    bodyY,
    dimensionY,
    startX: toX(stretch.from),
    endX: toX(stretch.to),
    things: here.map((thing) => ({ thing, box: boxOf(thing, line, { structureY, bodyY, tapsAbove }) })),
    labels: [
      ...above.draw(structureY, -1),
      ...taps.draw(tapEdge, outwards),
      ...pieces.draw(dimensionY, -1),
      ...joints.draw(dimensionY, 1),
    ],
    bands: bandsOf(line, structureY, bodyY),
    ticks,
    brokenLeft: stretch.from > 0 && cutsPiece(here, stretch.from),
    brokenRight: stretch.to < length && cutsPiece(here, stretch.to),
    overflow: Math.max(...lanes.map((lane) => lane.overflow)),
    farthestLabel: Math.max(...lanes.map((lane) => lane.farthest)),
  };
}

function contentOf(request: LineRequest): LineContent {
  const { stretch, scale, length } = request;
  return {
    ...request,
    here: request.things.filter((thing) => isOnLine(thing, stretch, length)),
    toX: (at) => MARGIN.left + (at - stretch.from) * scale,
  };
}
