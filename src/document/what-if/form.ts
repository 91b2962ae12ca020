import { DISTANCE, SIZE } from '../../domain/units/parse-length.ts';
import { type Entered, type EntryFault, type EntryOf, length, number, text } from '../form/entries.ts';
import { readFragment } from '../form/fragment-form.ts';
import { type Draft, newLog } from '../form/read-entry.ts';
import type { ProjectDocument } from '../job-document.ts';
import { type WhatIf, whatIfSchema } from './schema.ts';

/** In a choice of levels: all of them. */
export const EVERY_LEVEL = '*';

/** Rows of the form, and what names each. */
export const GROUPS = {
  conditions: { rows: 3, key: 'level' },
  activities: { rows: 3, key: 'activity' },
  types: { rows: 2, key: 'from' },
  stock: { rows: 2, key: 'type' },
  routes: { rows: 3, key: 'run' },
} as const;
type Group = keyof typeof GROUPS;

const CELLS: Readonly<Record<Group, readonly EntryOf[]>> = {
  conditions: [text('level'), length('mountingHeightMm', DISTANCE), text('congestion'), text('liveArea')],
  activities: [text('activity'), number('likely')],
  types: [text('from'), text('to'), text('level')],
  stock: [text('type'), { path: 'lengthsMm', reading: { kind: 'lengths', range: SIZE } }],
  routes: [text('run'), { path: 'legsMm', reading: { kind: 'lengths', range: SIZE } }, length('dropMm', DISTANCE)],
};

const HEAD: readonly EntryOf[] = [
  text('policy'),
  number('nonProductivePercent'),
  text('curve'),
  number('learning.rate'),
  number('learning.referenceRepeat'),
  number('factors.normalPercent'),
  number('factors.tightPercent'),
  number('factors.storeyPercentEach'),
  number('factors.livePercent'),
];

type Project = Pick<ProjectDocument, 'units' | 'currency'>;

export interface ReadWhatIf {
  readonly change: WhatIf;
  readonly faults: readonly EntryFault[];
  /** The field that a path of the change was read from: empty rows of the form are not in it. */
  readonly fieldOf: (path: string) => string;
}

/** The change that a form asks about, from its texts; fields are named by the paths of the change. Nothing typed changes nothing. */
export function readWhatIf(entered: Entered, project: Project): ReadWhatIf {
  const log = newLog(project);
  const rowsOf = new Map<Group, readonly number[]>();
  const { curve, ...head } = readFragment(entered, HEAD, null, log);
  const groups = (Object.keys(GROUPS) as Group[]).map((group) => {
    const rows = readRows(group, entered, log);
    rowsOf.set(
      group,
      rows.map(({ row }) => row),
    );
    return [group, rows.map(({ draft }) => shaped(group, draft))] as const;
  });
  const fieldOf = (path: string) =>
    path.replace(/^([a-z]+)\[(\d+)\]/, (all, group: string, place: string) => {
      const row = rowsOf.get(group as Group)?.[Number(place)];
      return row === undefined ? all : `${group}[${row}]`;
    });
  const draft = {
    ...head,
    ...(curve === 'none' ? { learning: 'none' } : {}),
    ...Object.fromEntries(groups.filter(([, rows]) => rows.length > 0)),
  };
  if (log.faults.length > 0) return { change: {}, faults: log.faults, fieldOf };
  const parsed = whatIfSchema.safeParse(draft);
  if (parsed.success) return { change: parsed.data, faults: [], fieldOf };
  const faults = parsed.error.issues.map(({ path }) => shapeFault(path, fieldOf));
  return { change: {}, faults, fieldOf };
}

interface ReadRow {
  readonly row: number;
  readonly draft: Draft;
}

/** Rows with any cell filled in, each with its number in the form. */
function readRows(group: Group, entered: Entered, log: Parameters<typeof readFragment>[3]): readonly ReadRow[] {
  return Array.from({ length: GROUPS[group].rows }, (_, row) => row).flatMap((row) => {
    const at = `${group}[${row}]`;
    const entries = CELLS[group].map((entry) => ({ ...entry, path: `${at}.${entry.path}` }));
    const draft = readFragment(entered, entries, null, log)[at] as Draft | undefined;
    return draft === undefined ? [] : [{ row, draft }];
  });
}

/** As the schema has it: a level of all is null, and yes and no are true and false. */
function shaped(group: Group, { level, liveArea, ...rest }: Draft): Draft {
  const place = level === EVERY_LEVEL || (group === 'types' && level === undefined) ? { level: null } : { level };
  return {
    ...rest,
    ...(group === 'conditions' || group === 'types' ? place : {}),
    ...(liveArea === undefined ? {} : { liveArea: liveArea === 'yes' }),
  };
}

const NEEDED: Readonly<Record<string, string>> = {
  level: 'Choose the level, or every level.',
  activity: 'Choose the activity.',
  likely: 'Give the likely hours, above 0, as 0.6.',
  from: 'Choose the type that it is.',
  to: 'Choose the type that it would be.',
  type: 'Choose the type.',
  lengthsMm: 'Give its stock lengths, separated by semicolons.',
  run: 'Give the label of the run.',
};

function shapeFault(path: readonly PropertyKey[], fieldOf: ReadWhatIf['fieldOf']): EntryFault {
  const [group, place, ...rest] = path.map(String);
  const isRow = place !== undefined && /^\d+$/.test(place);
  const key = isRow ? (rest[0] ?? '') : (path.at(-1) ?? '').toString();
  const field = isRow ? fieldOf(`${group}[${place}].${key}`) : path.map(String).join('.');
  return {
    field,
    said: NEEDED[key] ?? 'This figure is out of what it can be: a percentage is from 0, a rate from 0 to 1.',
  };
}
