import type { UnitSystem } from '../../../src/domain/model.ts';
import { formatLength } from '../../../src/domain/units/format-length.ts';
import type { Length } from '../../../src/domain/units/length.ts';
import type { FacingSpan } from './facing-spans.ts';
import { isWithin, middleOf, overlaps, type Stretch } from './lines.ts';
import type { StripRun } from './props.ts';
import type { Thing } from './things.ts';
import { crossingWords, feedWords } from './words.ts';

/** A piece of lettering that wants to stand at `x`; `of` is the thing it names. */
export interface Wish {
  readonly x: number;
  readonly text: string;
  readonly of: Thing | null;
}

export interface LineContent {
  readonly stretch: Stretch;
  readonly here: readonly Thing[];
  readonly run: StripRun;
  readonly facing: readonly FacingSpan[];
  readonly units: UnitSystem;
  readonly length: Length;
  readonly toX: (at: Length) => number;
}

/** Above the structure line: hangers with their distance, fittings, zones and crossings. */
export function aboveWishes(line: LineContent): Wish[] {
  const { run, stretch, units, length, toX, here } = line;
  const zoneX = (zone: Stretch) => toX(middleOf(zone, stretch));
  return [
    ...ofKind(here, 'support').map((of) => ({
      x: toX(of.from),
      text: `${of.mark} ${formatLength(of.from, units)}`,
      of,
    })),
    ...here.flatMap((of) => (isFitting(of) ? [{ x: zoneX(of), text: fittingWords(of), of: null }] : [])),
    ...run.noSupport
      .filter((zone) => overlaps(zone, stretch))
      .map((zone) => ({ x: zoneX(zone), text: reasoned('no hanger', zone.reason), of: null })),
    ...run.noJoint
      .filter((zone) => overlaps(zone, stretch))
      .map((zone) => ({ x: zoneX(zone), text: reasoned('no joint', zone.reason), of: null })),
    ...run.crossings
      .filter((crossing) => isWithin(crossing.at, stretch, length))
      .map((crossing) => ({ x: toX(crossing.at), text: crossingWords(crossing), of: null })),
  ];
}

/** The feed and the end caps, in the same lane as the hangers. */
export function endWishes(run: StripRun, feedX: number | null, capXs: readonly number[]): Wish[] {
  const caps = capXs.map((x) => ({ x, text: 'end cap', of: null }));
  return feedX === null ? caps : [{ x: feedX, text: feedWords(run.feed), of: null }, ...caps];
}

/** On the tap side: tap-offs, and where the facing changes. */
export function tapWishes({ here, facing, stretch, toX }: LineContent): Wish[] {
  return [
    ...ofKind(here, 'tap').map((of) => ({ x: toX(of.from), text: of.mark, of })),
    ...facing
      .filter((span) => span.from > stretch.from && span.from < stretch.to)
      .map((span) => ({ x: toX(span.from), text: `taps face ${span.word} from here`, of: null })),
  ];
}

/** Over the dimension line: each piece with its length. */
export function pieceWishes({ here, stretch, units, toX }: LineContent): Wish[] {
  return ofKind(here, 'piece').map((of) => {
    const cut = of.piece?.kind === 'cut' ? ' cut' : '';
    return { x: toX(middleOf(of, stretch)), text: `${of.mark} ${formatLength(of.to - of.from, units)}${cut}`, of };
  });
}

/** Under the dimension line: joints with their distance from the feed, and the ends of the line where no joint is. */
export function jointWishes({ here, stretch, units, toX }: LineContent): Wish[] {
  const joints = ofKind(here, 'joint');
  const bare = [stretch.from, stretch.to].filter((at) => !joints.some((joint) => joint.from === at));
  return [
    ...joints.map((of) => ({ x: toX(of.from), text: `${of.mark} ${formatLength(of.from, units)}`, of })),
    ...bare.map((at) => ({ x: toX(at), text: formatLength(at, units), of: null })),
  ];
}

export function ofKind(things: readonly Thing[], kind: Thing['kind']): Thing[] {
  return things.filter((thing) => thing.kind === kind);
}

function isFitting(thing: Thing): boolean {
  return thing.piece?.kind === 'elbow' || thing.piece?.kind === 'tee';
}

function fittingWords(thing: Thing): string {
  const hand = thing.piece?.hand?.replace('-', ' ');
  return hand === undefined ? `${thing.piece?.kind}` : `${thing.piece?.kind}, ${hand}`;
}

function reasoned(what: string, reason: string | null): string {
  return reason === null ? what : `${what}: ${reason}`;
}
