import { ACTIVITIES, type Activity } from '../../domain/labour/result.ts';
import { type Entered, type EntryOf, money, number, text } from '../form/entries.ts';
import { readFragment, writeFragment } from '../form/fragment-form.ts';
import { type Draft, type EntryLog, newLog } from '../form/read-entry.ts';
import { valueAt } from '../form/write-entry.ts';
import type { LabourBookDocument, ProjectDocument } from '../job-document.ts';
import {
  ACTIVITY_ENTRIES,
  BOOK_VERSION,
  CONDITION_ROWS,
  CREW_ROWS,
  FACTOR_NAMES,
  HEAD_ENTRIES,
  POINTS,
} from './entries.ts';
import { readSteps, type Step, writeSteps } from './steps.ts';

type Project = Pick<ProjectDocument, 'units' | 'currency'>;

/** A labour book as the texts of its form. Activities that the program does not know are not in it; saving keeps them. */
export function writeLabourBookForm(book: LabourBookDocument, project: Project): Entered {
  const { units } = project;
  return {
    [BOOK_VERSION]: book.version,
    ...writeFragment(book, [...HEAD_ENTRIES, ...ACTIVITY_ENTRIES], project),
    ...crewTexts(book, project),
    ...conditionTexts(book, project),
    'factors.height': writeSteps(
      (book.factors?.height ?? []).map(({ overMm, percent }) => ({ mm: overMm, figures: [percent] })),
      units,
    ),
    ...Object.fromEntries(
      ACTIVITIES.flatMap((id) => {
        const { bands = [], factors = [] } = book.activities[id] ?? {};
        return [
          [`activities.${id}.bands`, writeSteps(bands.map(stepOf), units)] as const,
          ...factors.map((factor) => [`activities.${id}.factors.${factor}`, 'yes'] as const),
        ];
      }),
    ),
    ...ticks('learning.activities', book.learning?.activities),
    ...Object.assign({}, ...(book.jobConditions ?? []).map((one, row) => ticks(feltBy(row), one.activities))),
  };
}

const feltBy = (row: number) => `jobConditions[${row}].activities`;

/** Activities that are named somewhere as ticks of a form. */
function ticks(path: string, activities: readonly string[] = []): Entered {
  return Object.fromEntries(activities.map((id) => [`${path}.${id}`, 'yes']));
}

/**
 * Activities that are ticked, in their order, or as they were where they are the same ones. With none ticked there is no list
 * – or the empty one that was there – and names that the program does not know stay.
 */
function readTicks(
  entered: Entered,
  path: string,
  before: readonly string[] | undefined,
): readonly string[] | undefined {
  const known = new Set<string>(ACTIVITIES);
  const strange = (before ?? []).filter((id) => !known.has(id));
  const now = [...ACTIVITIES.filter((id) => entered[`${path}.${id}`] === 'yes'), ...strange];
  if (now.length === 0) return before?.length === 0 ? before : undefined;
  return sameOrder(now, before);
}

type Band = NonNullable<LabourBookDocument['activities'][string]['bands']>[number];

const stepOf = ({ upToA, upToMm, low, likely, high }: Band): Step => ({
  amperes: upToA,
  mm: upToMm,
  figures: [low, likely, high],
});

/** A labour book as typed, for the job document's own check. An activity without any entry is left out of the book. */
export function readLabourBookForm(
  entered: Entered,
  project: Project,
  before: LabourBookDocument | null,
): Pick<EntryLog, 'faults' | 'questions'> & { readonly book: LabourBookDocument } {
  const log = newLog(project);
  const head = readFragment(entered, HEAD_ENTRIES, before, log);
  const version = (entered[BOOK_VERSION] ?? '').trim();
  const draft: Draft = {
    ...(version === '' ? {} : { version }),
    ...head,
    activities: readActivities(entered, before, log),
    ...optional('factors', readFactors(head.factors, entered, before, log)),
    ...optional('jobConditions', readConditions(entered, before, log)),
    ...optional('learning', readLearning(head.learning, entered, before)),
    ...optional('crew', readCrew(entered, before, log)),
  };
  return { book: draft as unknown as LabourBookDocument, faults: log.faults, questions: log.questions };
}

function optional(key: string, value: unknown): Draft {
  return value === undefined ? {} : { [key]: value };
}

function readActivities(entered: Entered, before: LabourBookDocument | null, log: EntryLog): Draft {
  const own = ACTIVITIES.flatMap((id) => {
    const activity = readActivity(id, entered, before, log);
    return activity === undefined ? [] : [[id, activity] as const];
  });
  const known = new Set<string>(ACTIVITIES);
  const strange = Object.entries(before?.activities ?? {}).filter(([id]) => !known.has(id));
  return Object.fromEntries([...own, ...strange]);
}

function readActivity(
  id: Activity,
  entered: Entered,
  before: LabourBookDocument | null,
  log: EntryLog,
): Draft | undefined {
  const path = `activities.${id}`;
  const entries = [text(`${path}.unit`), ...POINTS.map((point) => number(`${path}.${point}`))];
  const base = valueAt(readFragment(entered, entries, null, log), path) as Draft | undefined;
  const steps = readSteps(
    entered[`${path}.bands`] ?? '',
    {
      field: `${path}.bands`,
      count: 3,
      example:
        log.units === 'ft-in'
          ? `5'-0": 0.34 / 0.4 / 0.56, or 250 A, 5'-0": 0.34 / 0.4 / 0.56`
          : '1.5 m: 0.34 / 0.4 / 0.56, or 250 A, 1.5 m: 0.34 / 0.4 / 0.56',
      currents: 'too',
    },
    log,
  );
  const bands = steps?.map(({ amperes, mm, figures: [low, likely, high] }) => ({
    ...(amperes === undefined ? {} : { upToA: amperes }),
    ...(mm === undefined ? {} : { upToMm: mm }),
    low,
    likely,
    high,
  }));
  const factors = FACTOR_NAMES.filter((factor) => entered[`${path}.factors.${factor}`] === 'yes');
  if (base === undefined && (bands ?? []).length === 0) return undefined;
  const known = before?.activities[id];
  return {
    ...base,
    ...((bands ?? []).length > 0 || known?.bands !== undefined ? { bands: bands ?? [] } : {}),
    ...(factors.length > 0 || known?.factors !== undefined ? { factors: sameOrder(factors, known?.factors) } : {}),
  };
}

/** As they stood before, where they are the same ones, so that an untouched form changes nothing. */
function sameOrder<T>(now: readonly T[], before: readonly T[] | undefined): readonly T[] {
  const isSame = before?.length === now.length && before.every((one) => now.includes(one));
  return isSame ? before : now;
}

function readFactors(head: unknown, entered: Entered, before: LabourBookDocument | null, log: EntryLog): unknown {
  const field = 'factors.height';
  const example = log.units === 'ft-in' ? `12'-0": 10` : '3.6 m: 10';
  const steps = readSteps(entered[field] ?? '', { field, count: 1, example }, log) ?? [];
  const height = steps.map(({ mm, figures: [percent] }) => ({ overMm: mm, percent }));
  const keepsHeight = height.length > 0 || before?.factors?.height !== undefined;
  if (head === undefined && !keepsHeight) return before?.factors === undefined ? undefined : {};
  return { ...(head as Draft | undefined), ...(keepsHeight ? { height } : {}) };
}

/** What repeats always has a choice made, so learning is there only where one of its figures is. */
function readLearning(head: unknown, entered: Entered, before: LabourBookDocument | null): unknown {
  const learning = head as Draft | undefined;
  if (learning?.rate === undefined && learning?.referenceRepeat === undefined) return undefined;
  const activities = readTicks(entered, 'learning.activities', before?.learning?.activities);
  return { ...learning, ...(activities === undefined ? {} : { activities }) };
}

function conditionEntries(row: number): readonly EntryOf[] {
  return [text(`jobConditions[${row}].name`), number(`jobConditions[${row}].percent`)];
}

function conditionTexts({ jobConditions = [] }: LabourBookDocument, project: Project): Entered {
  return Object.assign(
    {},
    ...jobConditions.map((one, row) =>
      writeFragment({ [`jobConditions[${row}]`]: one }, conditionEntries(row), project),
    ),
  );
}

/** Rows with any cell filled in, each with the activities that are ticked for it. */
function readConditions(entered: Entered, before: LabourBookDocument | null, log: EntryLog): unknown {
  const known = before?.jobConditions ?? [];
  const rows = Array.from({ length: Math.max(CONDITION_ROWS, known.length) }, (_, row) => row).flatMap((row) => {
    const draft = readFragment(entered, conditionEntries(row), null, log)[`jobConditions[${row}]`] as Draft | undefined;
    if (draft === undefined) return [];
    const activities = readTicks(entered, feltBy(row), known[row]?.activities);
    return [{ ...draft, ...(activities === undefined ? {} : { activities }) }];
  });
  return rows.length > 0 || before?.jobConditions !== undefined ? rows : undefined;
}

/** One row of the crew; its cells are named like the document's own paths, `crew[0].role`. */
function memberEntries(row: number): readonly EntryOf[] {
  const at = (cell: string) => `crew[${row}].${cell}`;
  return [
    text(at('role')),
    number(at('number')),
    money(at('ratePerHour')),
    number(at('effectiveness')),
    number(at('burdenPercent')),
  ];
}

function crewTexts({ crew = [] }: LabourBookDocument, project: Project): Entered {
  return Object.assign(
    {},
    ...crew.map((member, row) => writeFragment({ [`crew[${row}]`]: member }, memberEntries(row), project)),
  );
}

/** Rows with any cell filled in; the document's own check names what such a row lacks. */
function readCrew(entered: Entered, before: LabourBookDocument | null, log: EntryLog): unknown {
  const rows = Math.max(CREW_ROWS, before?.crew?.length ?? 0);
  const crew = Array.from(
    { length: rows },
    (_, row) => readFragment(entered, memberEntries(row), null, log)[`crew[${row}]`],
  );
  const last = crew.findLastIndex((member) => member !== undefined);
  if (last < 0) return before?.crew === undefined ? undefined : [];
  return crew.slice(0, last + 1).map((member) => member ?? {});
}
