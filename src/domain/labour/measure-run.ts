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
 * fitting's joints are among the joints; work on the run as a whole counts it once.
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
  const joints = [{ pieces: layout.joints.length, length: null }];
  const once = [{ pieces: 1, length: null }];
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
    termination: [{ pieces: run.feed.terminations, length: null }],
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

function counted(lines: readonly TakeoffLine[], item: TakeoffItem): Measure[] {
  const ofItem = lines.filter((line) => line.item === item);
  const lengths = [...new Set(ofItem.map((line) => line.length))];
  return lengths.map((length) => ({ pieces: piecesOf(ofItem, length), length }));
}

function piecesOf(lines: readonly TakeoffLine[], length: Length | null): number {
  return lines.filter((line) => line.length === length).reduce((sum, line) => sum + line.quantity, 0);
}

/** The slot of a run is closed as one piece of work; its takeoff line counts metres. */
function closures(lines: readonly TakeoffLine[]): Measure[] {
  return lines
    .filter((line) => line.item === 'slot-closure')
    .map((line) => ({ pieces: 1, length: Math.round(line.quantity * METRE) }));
}
