import { ACTIVITIES, type Activity, type Labour } from './result.ts';

/**
 * Likely hours of each activity on each level, in the levels' order, and last what belongs to none of them. Activities
 * without hours are left out. All figures together are the likely hours of the job.
 */
export function hoursByLevel(
  { lines }: Pick<Labour, 'lines'>,
  levels: readonly string[],
): readonly { readonly activity: Activity | 'extra'; readonly hours: readonly number[] }[] {
  const place = new Map(levels.map((level, index) => [level, index]));
  const rows = new Map<Activity | 'extra', number[]>();
  for (const { activity, level, hours } of lines) {
    const row = rows.get(activity) ?? new Array<number>(levels.length + 1).fill(0);
    rows.set(activity, row);
    const column = place.get(level ?? '') ?? levels.length;
    row[column] = row[column]! + hours;
  }
  return [...ACTIVITIES, 'extra' as const].flatMap((activity) => {
    const hours = rows.get(activity);
    return hours === undefined ? [] : [{ activity, hours }];
  });
}
