import { LINE_ACTIVITIES } from '../../domain/labour/result.ts';
import type { Entered, EntryFault } from '../form/entries.ts';
import { type CrewPlanDocument, crewPlanSchema } from './schema.ts';

export const CREW_ROWS = 6;
export const WEEKDAYS = [1, 2, 3, 4, 5, 6, 7] as const;

/** The plan as the texts of its form: crews in rows, and for each activity the number of its crew. */
export function writeCrewForm(plan: CrewPlanDocument): Entered {
  return {
    start: plan.start,
    hoursPerDay: String(plan.hoursPerDay),
    bufferDays: String(plan.bufferDays),
    holidays: plan.holidays.join('\n'),
    ...Object.fromEntries(plan.weekdays.map((day) => [`weekday.${day}`, 'yes'])),
    ...Object.fromEntries(
      plan.crews.flatMap(({ name, heads, lifts, activities }, row) => [
        [`crews[${row}].name`, name],
        [`crews[${row}].heads`, String(heads)],
        ...(lifts === undefined ? [] : [[`crews[${row}].lifts`, String(lifts)]]),
        ...activities.map((activity) => [`activity.${activity}`, String(row + 1)]),
      ]),
    ),
    ...Object.fromEntries(plan.released.map(({ level, date }) => [`released.${level}`, date])),
  };
}

/** What was typed, checked whole; a fault stands at the name of its field. Empty rows of crews are left out. */
export function readCrewForm(
  entered: Entered,
  levels: readonly string[],
): { readonly plan: CrewPlanDocument } | { readonly faults: readonly EntryFault[] } {
  const rows = crewRows(entered);
  const parsed = crewPlanSchema.safeParse({
    start: said(entered, 'start'),
    hoursPerDay: figure(entered, 'hoursPerDay'),
    bufferDays: figure(entered, 'bufferDays'),
    weekdays: WEEKDAYS.filter((day) => entered[`weekday.${day}`] !== undefined),
    holidays: said(entered, 'holidays')
      .split(/[\s,;]+/)
      .filter(Boolean),
    crews: rows.map(({ row, name }) => ({
      name,
      heads: figure(entered, `crews[${row}].heads`),
      ...(said(entered, `crews[${row}].lifts`) === '' ? {} : { lifts: figure(entered, `crews[${row}].lifts`) }),
      activities: LINE_ACTIVITIES.filter((activity) => entered[`activity.${activity}`] === String(row + 1)),
    })),
    released: levels.flatMap((level) => {
      const date = said(entered, `released.${level}`);
      return date === '' ? [] : [{ level, date }];
    }),
  });
  const stray = strayActivities(entered, rows);
  if (parsed.success && stray.length === 0) return { plan: parsed.data };
  const faults = (parsed.error?.issues ?? []).map(({ path, message }) => ({
    field: fieldOf(path, rows, levels, entered),
    said: message.startsWith('Invalid') ? 'A figure is wanted here, as 8.' : message,
  }));
  return { faults: [...faults, ...stray] };
}

interface CrewRow {
  readonly row: number;
  readonly name: string;
}

function crewRows(entered: Entered): readonly CrewRow[] {
  return Array.from({ length: CREW_ROWS }, (_, row) => ({ row, name: said(entered, `crews[${row}].name`) })).filter(
    ({ row, name }) => name !== '' || said(entered, `crews[${row}].heads`) !== '',
  );
}

function strayActivities(entered: Entered, rows: readonly CrewRow[]): EntryFault[] {
  const numbers = new Set(rows.map(({ row }) => String(row + 1)));
  return LINE_ACTIVITIES.filter((activity) => {
    const crew = entered[`activity.${activity}`] ?? '';
    return crew !== '' && !numbers.has(crew);
  }).map((activity) => ({
    field: `activity.${activity}`,
    said: `There is no crew ${entered[`activity.${activity}`]}: choose one that has a name, or none.`,
  }));
}

function fieldOf(
  path: readonly PropertyKey[],
  rows: readonly CrewRow[],
  levels: readonly string[],
  entered: Entered,
): string {
  const [first, index, last] = path;
  if (first === 'crews') return `crews[${rows[Number(index)]?.row ?? 0}].${String(last ?? 'name')}`;
  if (first === 'weekdays') return 'weekday.1';
  if (first === 'released') {
    const dated = levels.filter((level) => said(entered, `released.${level}`) !== '');
    return `released.${dated[Number(index)] ?? ''}`;
  }
  return String(first);
}

function said(entered: Entered, name: string): string {
  return (entered[name] ?? '').trim();
}

function figure(entered: Entered, name: string): number {
  const text = said(entered, name);
  return text === '' ? Number.NaN : Number(text);
}
