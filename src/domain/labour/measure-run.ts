import type { RunLayout } from '../layout/result.ts';
import type { Run } from '../model.ts';
import type { TakeoffItem, TakeoffLine } from '../takeoff/result.ts';
import { type Length, METRE } from '../units/length.ts';
import type { Activity } from './result.ts';

/** So many pieces of work, each of this length; null for work that has no length. */
export interface Measure {
  readonly pieces: number;
  readonly length: Length | null;
}

/**
 * What one run gives each activity to do. Pieces come from the run's takeoff, so that hours and orders count alike; a
 * fitting's joints are among the joints; work on the run as a whole counts it once; what there is none of has no measure.
 *
 * Example: a run with four joints and 20 tap-offs has 24 labels to set and one insulation test to make.
 */
export function measureRun(
  run: Run,
  layout: RunLayout,
  lines: readonly TakeoffLine[],
): Readonly<Record<Activity, readonly Measure[]>> {
  const sections = counted(lines, 'section');
  const taps = counted(lines, 'tap');
  const joints = pieces(layout.joints.length);
  const once = pieces(1);
  return {
    'handle-section': sections,
    'handle-tap': taps,
    'lay-out': [{ pieces: 1, length: layout.length }],
    support: counted(lines, 'support'),
    section: sections,
    joint: joints,
    elbow: counted(lines, 'elbow'),
    tee: counted(lines, 'tee'),
    'end-feed': counted(lines, 'end-feed'),
    termination: pieces(run.feed.terminations),
    'end-cap': counted(lines, 'end-cap'),
    'slot-closure': closures(lines),
    tap: taps,
    drop: counted(lines, 'drop'),
    label: counted(lines, 'label'),
    'fire-seal': counted(lines, 'fire-seal'),
    'test-insulation': once,
    'test-ground': once,
    'test-joint': joints,
    'torque-log': once,
    'test-tap': taps,
    'thermal-scan': once,
    'test-papers': once,
    punch: once,
  };
}

function pieces(count: number): Measure[] {
  return count > 0 ? [{ pieces: count, length: null }] : [];
}

function counted(lines: readonly TakeoffLine[], item: TakeoffItem): Measure[] {
  const quantities = new Map<Length | null, number>();
  for (const line of lines) {
    if (line.item === item) quantities.set(line.length, (quantities.get(line.length) ?? 0) + line.quantity);
  }
  return [...quantities].filter(([, sum]) => sum > 0).map(([length, sum]) => ({ pieces: sum, length }));
}

/** The slot of a run is closed as one piece of work; its takeoff line counts metres. */
function closures(lines: readonly TakeoffLine[]): Measure[] {
  return lines
    .filter((line) => line.item === 'slot-closure')
    .map((line) => ({ pieces: 1, length: Math.round(line.quantity * METRE) }));
}
