import type { Activity } from '../../src/domain/labour/result.ts';

const WORDS: Readonly<Record<Activity | 'extra', string>> = {
  'handle-section': 'receive and distribute sections',
  'handle-tap': 'receive and distribute tap-offs',
  'lay-out': 'lay out',
  support: 'hangers',
  section: 'hang sections',
  joint: 'make up joints',
  elbow: 'elbows',
  tee: 'tees',
  'end-feed': 'end feeds',
  termination: 'terminations',
  'end-cap': 'end caps',
  'slot-closure': 'slot closure',
  tap: 'set tap-offs',
  drop: 'drops',
  label: 'labels',
  'fire-seal': 'fire seals',
  'test-insulation': 'insulation test',
  'test-ground': 'ground continuity test',
  'test-joint': 'joint resistance',
  'torque-log': 'torque log',
  'test-tap': 'tap-off checks',
  'thermal-scan': 'thermal scan',
  'test-papers': 'test papers',
  punch: 'punch list',
  extra: 'added by hand',
};

/** An activity of the labour book as pages call it. */
export function activityWord(activity: Activity | 'extra'): string {
  return WORDS[activity];
}
