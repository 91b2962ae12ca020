import type { RunLayout } from '../layout/result.ts';
import type { Run } from '../model.ts';
import type { Length } from '../units/length.ts';
import type { OrderItem } from './ordering.ts';

/** Marks of a run's things as the floor has them; what the floor does not know yet is numbered from the feed. */
export interface RunMarks {
  readonly pieces: readonly string[];
  readonly joints: readonly string[];
  readonly supports: readonly string[];
}

/** One place that a line was counted from: the mark of the thing that stands there, without its run. */
export interface MarkedPlace {
  readonly mark: string;
  readonly at: Length;
}

/**
 * What stands at each place that a line of one run was counted from: P03 for a section or fitting, J02 for a joint, H05
 * for a hanger, the tap-off's own name, and words for the feed, an end and a crossing.
 *
 * Example: a line of two 20 ft sections from 0 and 20 ft gives P01 at 0 and P02 at 20 ft.
 */
export function placeMarks(
  { item, places }: { readonly item: OrderItem; readonly places: readonly Length[] },
  run: Run,
  layout: RunLayout,
  marks: RunMarks | null = null,
): readonly MarkedPlace[] {
  const named = namesOf(item, run, layout, marks);
  return places.map((at) => ({ mark: named.get(at)?.shift() ?? '', at }));
}

/** Names by distance; several things may stand at one distance, as a centre feed's two joints do. */
function namesOf(item: OrderItem, run: Run, layout: RunLayout, marks: RunMarks | null): Map<Length, string[]> {
  const names = new Map<Length, string[]>();
  const add = (at: Length, name: string) => {
    const there = names.get(at);
    if (there) there.push(name);
    else names.set(at, [name]);
  };
  const number = (letter: string, index: number) => `${letter}${String(index + 1).padStart(2, '0')}`;
  const pieces = () => {
    layout.pieces.forEach(({ from }, i) => {
      add(from, marks?.pieces[i] ?? number('P', i));
    });
  };
  const joints = () => {
    layout.joints.forEach(({ at }, i) => {
      add(at, marks?.joints[i] ?? number('J', i));
    });
  };
  const supports = () => {
    layout.supports.forEach(({ at }, i) => {
      add(at, marks?.supports[i] ?? number('H', i));
    });
  };
  const taps = () => {
    for (const { id, at } of layout.taps) add(at, id);
  };
  switch (item) {
    case 'section':
    case 'elbow':
    case 'tee':
    case 'slot-closure':
      pieces();
      break;
    case 'clamp':
    case 'contact-set':
    case 'bolt':
      joints();
      break;
    case 'support':
    case 'rod':
    case 'rod-stock':
    case 'anchor':
    case 'nut':
    case 'washer':
    case 'brace':
      supports();
      break;
    case 'tap':
    case 'drop':
      taps();
      break;
    case 'label':
      taps();
      joints();
      break;
    case 'end-feed':
      add(run.feed.kind === 'centre' ? (run.feed.at ?? Math.round(layout.length / 2)) : 0, 'feed');
      break;
    case 'end-cap':
      if (run.feed.kind === 'centre') add(0, 'start');
      add(layout.length, 'end');
      break;
    case 'fire-seal':
      for (const { at, kind } of run.crossings) add(at, kind === 'floor' ? 'floor' : 'wall');
      break;
    case 'extra':
      break;
  }
  return names;
}
