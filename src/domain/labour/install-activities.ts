import { ACTIVITIES, type Activity } from './result.ts';

const AFTER_INSTALLING: readonly Activity[] = [
  'test-insulation',
  'test-ground',
  'test-joint',
  'torque-log',
  'test-tap',
  'thermal-scan',
  'test-papers',
  'punch',
];

/** The activities that put busway up, without tests, papers and punch: what a learning curve covers when the book names none. */
export const INSTALL_ACTIVITIES: readonly Activity[] = ACTIVITIES.filter((id) => !AFTER_INSTALLING.includes(id));
