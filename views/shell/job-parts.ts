/** The parts of a job, in the order of the work, with our own plain words. The only list of them. */
export const JOB_PARTS = [
  { part: 'floors', word: 'Floors' },
  { part: 'takeoff', word: 'Takeoff' },
  { part: 'hours', word: 'Hours' },
  { part: 'inspections', word: 'Inspections' },
  { part: 'closeout', word: 'Closeout' },
  { part: 'lists', word: 'Lists' },
  { part: 'settings', word: 'Settings' },
] as const;
export type JobPart = (typeof JOB_PARTS)[number]['part'];

/** `jobPartHref('7f2', 'takeoff') = '/jobs/7f2/takeoff'`. */
export function jobPartHref(jobId: string, part: JobPart): string {
  return `/jobs/${encodeURIComponent(jobId)}/${part}`;
}
