import type { Length } from '../../../src/domain/units/length.ts';
import type { Box } from '../scale.ts';
import { isWithin, overlaps, type Stretch } from './lines.ts';
import { BODY } from './metrics.ts';
import type { LineContent } from './wishes.ts';

/** A hatched part of the line: a zone where something may not stand, or what the run passes through. */
export interface Band {
  readonly kind: 'no-hanger' | 'no-joint' | 'wall' | 'fire-wall' | 'floor';
  readonly box: Box;
}

export function bandsOf(line: LineContent, structureY: number, bodyY: number): Band[] {
  const { run, stretch, length, toX } = line;
  const bottom = bodyY + BODY;
  const inView = run.crossings.filter((crossing) => isWithin(crossing.at, stretch, length));
  const faces = (crossing: { at: Length; thickness: Length }): Stretch => ({
    from: crossing.at - crossing.thickness / 2,
    to: crossing.at + crossing.thickness / 2,
  });
  const spanned = (zone: Stretch, y: number, height: number): Box => {
    const x = toX(Math.max(zone.from, stretch.from));
    return { x, y, width: toX(Math.min(zone.to, stretch.to)) - x, height };
  };
  return [
    ...run.noSupport
      .filter((zone) => overlaps(zone, stretch))
      .map((zone): Band => ({ kind: 'no-hanger', box: spanned(zone, structureY, 11) })),
    ...run.noJoint
      .filter((zone) => overlaps(zone, stretch))
      .map((zone): Band => ({ kind: 'no-joint', box: spanned(zone, bottom + 1, 6) })),
    ...inView.flatMap((crossing): Band[] => [
      { kind: crossing.kind, box: spanned(faces(crossing), structureY, bodyY - structureY - 2) },
      { kind: crossing.kind, box: spanned(faces(crossing), bottom + 2, 8) },
    ]),
  ];
}
