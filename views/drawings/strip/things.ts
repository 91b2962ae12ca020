import type { PlacedPiece } from '../../../src/domain/layout/result.ts';
import { formatLength } from '../../../src/domain/units/format-length.ts';
import type { Length } from '../../../src/domain/units/length.ts';
import { type Ink, lookOf, type WorkState } from '../states.ts';
import type { StripItem, StripProps } from './props.ts';
import { handWords, pieceWord } from './words.ts';

/** One thing of the run, ready to be drawn or listed: where it is, what it is called and how it is inked. */
export interface Thing {
  readonly kind: 'piece' | 'joint' | 'support' | 'tap';
  readonly from: Length;
  readonly to: Length;
  readonly mark: string;
  readonly what: string;
  readonly ink: Ink;
  readonly word: string;
  readonly href: string | null;
  readonly piece: PlacedPiece | null;
}

/** Everything of the run in order of distance; a joint before the piece that starts at it. */
export function thingsOf(props: Pick<StripProps, 'layout' | 'record' | 'run' | 'units' | 'allAlike'>): Thing[] {
  const { layout, record, run, units, allAlike } = props;
  const short = (mark: string) => (mark.startsWith(`${run.id}-`) ? mark.slice(run.id.length + 1) : mark);
  const recorded = (item: StripItem<WorkState> | undefined, letter: string, index: number, first: WorkState) => ({
    mark: short(item?.mark ?? `${letter}${String(index + 1).padStart(2, '0')}`),
    ...inked(item, first),
    ...(allAlike ? { ink: 'firm' as const } : {}),
    href: item?.href ?? null,
  });
  const at = (place: Length) => ({ from: place, to: place, piece: null });
  const things: Thing[] = [
    ...layout.joints.map((joint, index) => ({
      kind: 'joint' as const,
      ...at(joint.at),
      what: 'joint',
      ...recorded(record?.joints?.[index], 'J', index, 'open'),
    })),
    ...layout.pieces.map((piece, index) => ({
      kind: 'piece' as const,
      from: piece.from,
      to: piece.to,
      piece,
      what: pieceWhat(piece, formatLength(piece.to - piece.from, units)),
      ...recorded(record?.pieces?.[index], 'P', index, 'planned'),
    })),
    ...layout.supports.map((support, index) => ({
      kind: 'support' as const,
      ...at(support.at),
      what: 'hanger',
      ...recorded(record?.supports?.[index], 'H', index, 'planned'),
    })),
    ...layout.taps.map((tap) => {
      const item = record?.taps?.[tap.id];
      const drawn = recorded(item ?? { mark: tap.id, state: 'planned' }, '', 0, 'planned');
      return { kind: 'tap' as const, ...at(tap.at), what: 'tap-off', ...drawn };
    }),
  ];
  return things.sort((a, b) => a.from - b.from);
}

function inked(item: StripItem<WorkState> | undefined, first: WorkState): { ink: Ink; word: string } {
  if (item?.change !== undefined) return item.change;
  if (item?.fault !== undefined) return { ink: lookOf('fault').ink, word: `fault: ${item.fault}` };
  return lookOf(item?.state ?? first);
}

function pieceWhat(piece: PlacedPiece, length: string): string {
  const hand = piece.hand === null ? '' : `, ${handWords(piece.hand)}`;
  return `${pieceWord(piece.kind)} ${length}${hand}`;
}
