import type { UnitSystem } from '../../../src/domain/model.ts';
import type { Length } from '../../../src/domain/units/length.ts';
import type { Box } from '../scale.ts';
import { type Band, bandsOf } from './bands.ts';
import { type FacingSpan, facingAt } from './facing-spans.ts';
import { type DrawnLabel, fillLane } from './fill-lane.ts';
import { isWithin, overlaps, type Stretch } from './lines.ts';
import { BODY, CLAMP, CLIP, FAN, HEADING, MARGIN, ROD, ROW, TAP } from './metrics.ts';
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

export interface DrawnThing {
  readonly thing: Thing;
  readonly box: Box;
}

/** One line of the strip in drawing units, its top at 0. */
export interface LinePlan {
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
  readonly feed: { readonly kind: 'end' | 'centre' | 'tee'; readonly x: number } | null;
  readonly capXs: readonly number[];
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
    things: here.map((thing) => ({ thing, box: boxOf(thing, line, bodyY, tapsAbove) })),
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

/** A joint at a break shows on both lines; a hanger or a tap-off on one. */
function isOnLine(thing: Thing, stretch: Stretch, length: Length): boolean {
  if (thing.kind === 'piece') return overlaps(thing, stretch);
  if (thing.kind === 'joint') return thing.from >= stretch.from && thing.from <= stretch.to;
  return isWithin(thing.from, stretch, length);
}

function cutsPiece(things: readonly Thing[], at: Length): boolean {
  return things.some((thing) => thing.kind === 'piece' && thing.from < at && thing.to > at);
}

function boxOf(thing: Thing, { stretch, toX }: LineContent, bodyY: number, tapsAbove: boolean): Box {
  const x = toX(thing.from);
  switch (thing.kind) {
    case 'piece': {
      const left = toX(Math.max(thing.from, stretch.from)) + 0.8;
      return { x: left, y: bodyY, width: toX(Math.min(thing.to, stretch.to)) - 0.8 - left, height: BODY };
    }
    case 'joint':
      return { x: x - CLAMP.width / 2, y: bodyY - CLAMP.reach, width: CLAMP.width, height: BODY + 2 * CLAMP.reach };
    case 'support':
      return { ...CLIP, x: x - CLIP.width / 2, y: bodyY - CLIP.height };
    case 'tap':
      return { ...TAP, x: x - TAP.width / 2, y: tapsAbove ? bodyY - TAP.height : bodyY + BODY };
  }
}

/** The feed stands before the first piece, or over the run where it is fed in its length; every open end has its cap. */
function endsOf({ run, stretch, length, toX }: LineContent): Pick<LinePlan, 'feed' | 'capXs'> {
  const { kind, at } = run.feed;
  const first = stretch.from === 0;
  const lastCap = stretch.to === length ? [toX(length)] : [];
  if (kind !== 'centre') return { feed: first ? { kind, x: toX(0) - 22 } : null, capXs: lastCap };
  const centre = at ?? length / 2;
  const feed = isWithin(centre, stretch, length) ? { kind, x: toX(centre) } : null;
  return { feed, capXs: first ? [toX(0), ...lastCap] : lastCap };
}
