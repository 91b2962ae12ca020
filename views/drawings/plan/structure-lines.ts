import type { UnitSystem } from '../../../src/domain/model.ts';
import { formatLength } from '../../../src/domain/units/format-length.ts';
import { type Length, UNITS_PER_MM } from '../../../src/domain/units/length.ts';
import { type Box, tenth } from '../scale.ts';
import { textWidth } from '../text-width.ts';
import { placeOnPath } from './path-parts.ts';
import type { PlanRun } from './props.ts';
import type { View } from './view.ts';

export const STRUCTURE_LETTER = 8;
/** More lines than this are a screen of grey and say nothing. */
const MOST = 400;

export interface StructureLine {
  readonly d: string;
  readonly label: { readonly x: number; readonly y: number; readonly text: string } | null;
}

/**
 * The members of the structure that hangers can be fixed to, where runs say that they hang from a grid: each a line across the
 * plan, labelled with its distance from the origin of the level along x or y, as far as labels have room.
 */
export function structureLines(runs: readonly PlanRun[], view: View, units: UnitSystem, frame: Box): StructureLine[] {
  const { xs, ys } = membersOf(runs);
  if (xs.length + ys.length > MOST) return [];
  let lastX = Number.NEGATIVE_INFINITY;
  const upright = xs.flatMap((x): StructureLine[] => {
    const at = view.toX(x);
    if (at < frame.x || at > frame.x + frame.width) return [];
    const text = formatLength(x, units);
    const width = textWidth(text, STRUCTURE_LETTER);
    const onSheet = at - width / 2 >= view.frame.x && at + width / 2 <= view.frame.x + view.frame.width;
    const hasRoom = onSheet && at - lastX > width + 8;
    if (hasRoom) lastX = at;
    return [
      {
        d: `M${tenth(at)} ${tenth(frame.y + 12)}V${tenth(frame.y + frame.height)}`,
        label: hasRoom ? { x: tenth(at), y: tenth(frame.y + 8), text } : null,
      },
    ];
  });
  return [...upright, ...ys.flatMap((y) => levelLine(y, view, frame, units))];
}

function levelLine(y: Length, view: View, frame: Box, units: UnitSystem): StructureLine[] {
  const at = view.toY(y);
  if (at < frame.y || at > frame.y + frame.height) return [];
  const text = formatLength(y, units);
  const width = textWidth(text, STRUCTURE_LETTER);
  return [
    {
      d: `M${tenth(frame.x)} ${tenth(at)}H${tenth(frame.x + frame.width - width - 4)}`,
      label: { x: tenth(frame.x + frame.width - width / 2), y: tenth(at + 3), text },
    },
  ];
}

/** Members across legs that run along x or y, each once to the millimetre. */
function membersOf(runs: readonly PlanRun[]): { xs: Length[]; ys: Length[] } {
  const [xs, ys] = [new Map<number, Length>(), new Map<number, Length>()];
  for (const { structure, path } of runs) {
    if (structure?.kind !== 'grid') continue;
    const end = path.at(-1)?.at ?? 0;
    for (let at = structure.offset; at <= end; at += structure.pitch) {
      const place = placeOnPath(path, at);
      if (place === null || place.heading === null) continue;
      if (Math.abs(Math.sin(place.heading)) < 1e-6) xs.set(Math.round(place.x / UNITS_PER_MM), place.x);
      else if (Math.abs(Math.cos(place.heading)) < 1e-6) ys.set(Math.round(place.y / UNITS_PER_MM), place.y);
    }
  }
  const sorted = (lines: Map<number, Length>) => [...lines.values()].sort((a, b) => a - b);
  return { xs: sorted(xs), ys: sorted(ys) };
}
