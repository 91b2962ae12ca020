import type { LineActivity } from '../../domain/labour/result.ts';
import type { CrewPlanDocument } from './schema.ts';

const CREWS: readonly {
  readonly name: string;
  readonly heads: number;
  readonly activities: readonly LineActivity[];
}[] = [
  { name: 'Hangers', heads: 2, activities: ['lay-out', 'support'] },
  {
    name: 'Sections and joints',
    heads: 3,
    activities: [
      'handle-section',
      'section',
      'joint',
      'elbow',
      'tee',
      'end-feed',
      'termination',
      'end-cap',
      'slot-closure',
      'fire-seal',
    ],
  },
  { name: 'Tap-offs', heads: 2, activities: ['handle-tap', 'tap', 'drop', 'label'] },
  {
    name: 'Tests and punch',
    heads: 2,
    activities: [
      'test-insulation',
      'test-ground',
      'test-joint',
      'torque-log',
      'test-tap',
      'thermal-scan',
      'test-papers',
      'punch',
    ],
  },
];

/** What the form of a job that has no plan yet starts from: four crews in the order of the work. A suggestion, not saved. */
export function firstCrewPlan(start: string): CrewPlanDocument {
  return {
    start,
    hoursPerDay: 8,
    weekdays: [1, 2, 3, 4, 5],
    holidays: [],
    bufferDays: 1,
    crews: CREWS.map((crew) => ({ ...crew, activities: [...crew.activities] })),
    released: [],
  };
}
