import type { Run } from '../model.ts';
import type { Length } from '../units/length.ts';
import { type BrokenRule, bars, brokenRules, spans } from './support-rules.ts';
import type { SupportSurroundings, Window } from './support-surroundings.ts';

export interface SupportPlace {
  readonly broken: readonly BrokenRule[];
  /** Nearest places that break nothing, towards the feed and away from it; null when there is none on that side. */
  readonly below: Length | null;
  readonly above: Length | null;
}

/**
 * Judges where a hanger really stands, by the rules that placed it: gaps to its neighbours, overhang, clearances of joints,
 * walls and blocked zones, and the fitting that it alone holds. Lengths in 1/80 mm; loads are not worked again.
 *
 * Example: joint at 20.0 ft, clearance 12 in: 20.33 ft breaks `joint` by 8 in; legal at 19.0 ft and below or 21.0 ft and above.
 */
export function judgeSupportPlace(at: Length, around: SupportSurroundings): SupportPlace {
  const legal = supportWindows(around);
  return {
    broken: brokenRules(at, around),
    below: nearestBelow(at, legal, around),
    above: nearestAbove(at, legal, around),
  };
}

/** Where the hanger may stand between its neighbours, so that the floor can shift it without asking the office. */
export function supportWindows(around: SupportSurroundings): readonly Window[] {
  const reach = spans(around).reduce(intersect, {
    from: around.stretchStart ?? 0,
    to: around.runLength,
  });
  return bars(around).reduce<readonly Window[]>(
    (left, bar) => left.flatMap((window) => without(window, bar)),
    nonEmpty(reach),
  );
}

function intersect(a: Window, b: Window): Window {
  return { from: Math.max(a.from, b.from), to: Math.min(a.to, b.to) };
}

function nonEmpty(window: Window): readonly Window[] {
  return window.from <= window.to ? [window] : [];
}

function without(window: Window, { from, to }: Window): readonly Window[] {
  if (to <= window.from || from >= window.to) return [window];
  return [...nonEmpty({ from: window.from, to: from }), ...nonEmpty({ from: to, to: window.to })];
}

function nearestBelow(at: Length, legal: readonly Window[], { structure }: SupportSurroundings): Length | null {
  const reachable = legal.flatMap((window) => {
    const top = Math.min(at, window.to);
    const place = structure.kind === 'grid' ? gridAtOrBelow(top, structure) : top;
    return place >= window.from && place <= top ? [place] : [];
  });
  return reachable.length > 0 ? Math.max(...reachable) : null;
}

function nearestAbove(at: Length, legal: readonly Window[], { structure }: SupportSurroundings): Length | null {
  const reachable = legal.flatMap((window) => {
    const bottom = Math.max(at, window.from);
    const place = structure.kind === 'grid' ? gridAtOrAbove(bottom, structure) : bottom;
    return place <= window.to && place >= bottom ? [place] : [];
  });
  return reachable.length > 0 ? Math.min(...reachable) : null;
}

type Grid = Extract<Run['structure'], { readonly kind: 'grid' }>;

function gridAtOrBelow(at: Length, { pitch, offset }: Grid): Length {
  return offset + Math.floor((at - offset) / pitch) * pitch;
}

function gridAtOrAbove(at: Length, { pitch, offset }: Grid): Length {
  return offset + Math.ceil((at - offset) / pitch) * pitch;
}
