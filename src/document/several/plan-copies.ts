import { z } from 'zod';
import type { Fault } from '../fault.ts';
import type { JobDocument, RunDocument } from '../job-document.ts';
import { nearestWord } from '../parsing/nearest-word.ts';
import { coordinateMm } from '../schema/fields.ts';
import { rowNumber } from './id-parts.ts';
import { landings } from './landings.ts';
import { filled, type NewPlace, newId, renamed } from './naming.ts';
import { type MadeRun, MOST_MADE, type SeveralPlan } from './plan.ts';
import { absentFaults, cut, fault, nameFaults, namingFaults } from './plan-faults.ts';
import { shiftedRun } from './shifted-run.ts';
import { chosenRuns, parentOf } from './with-branches.ts';

export const MOST_ROWS = 200;

export const copyAskedSchema = z
  .strictObject({
    runs: z.array(z.string()).max(MOST_MADE).describe('Runs to copy, by their label in the job document.'),
    rows: z.number().describe(`Further rows of each, 0 to ${MOST_ROWS}, each a pitch beyond the one before.`),
    pitch: z
      .strictObject({ xMm: coordinateMm('East, mm'), yMm: coordinateMm('North, mm') })
      .describe('From one row to the next, in plan.'),
    levels: z.array(z.string()).max(MOST_MADE).default([]).describe('Other levels that get the runs and rows as well.'),
    step: z
      .number()
      .int()
      .min(1)
      .max(10_000)
      .nullable()
      .default(null)
      .describe('How far the number in the names is counted on from row to row; null: by as many rows as are copied.'),
    names: z
      .string()
      .max(200)
      .nullable()
      .default(null)
      .describe('Naming with {level}, {row}, {side}, {run}; null: level replaced, number counted on.'),
    supply: z.string().max(200).nullable().default(null).describe('What feeds the copies, as a naming; null: renamed.'),
    taps: z.boolean().default(true).describe('Tap-offs come along.'),
    branches: z.boolean().default(true).describe('Branches of the runs come along.'),
  })
  .meta({ id: 'RunCopies' });
export type CopyAsked = z.infer<typeof copyAskedSchema>;

/**
 * Copies of runs at further rows and on other levels. `taken` are the labels of all runs of the job; `job` holds at least the
 * runs asked for with what they are joined to, and those of the levels that get copies. Pairs and tees among the copied runs
 * become pairs and tees of the copies.
 */
export function planCopies(job: JobDocument, taken: ReadonlySet<string>, asked: CopyAsked): SeveralPlan {
  const chosen = chosenRuns(job.runs, asked.runs, asked.branches);
  const early = [...absentFaults(asked.runs, taken), ...askedFaults(job, chosen, asked)];
  if (early.length > 0) return { ok: false, faults: early };
  const made = batchesOf(chosen, asked).flatMap((batch) => copiesOf(chosen, batch, asked));
  const late = nameFaults(made, taken);
  if (late.length > 0) return { ok: false, faults: late };
  const landed = landings(job, made).map(({ made: { run, from }, on }) =>
    fault(
      asked.levels.includes(run.level) ? 'levels' : 'pitch.xMm',
      `${run.id}, a copy of ${from}, would lie in ${on}.`,
      'Choose another pitch, fewer rows or another level, or move the run that is there.',
    ),
  );
  if (landed.length > 0) return { ok: false, faults: cut(landed) };
  return { ok: true, made, changed: [], notes: notesOn(chosen, made, asked) };
}

/** One row on one level: every chosen run once. `level` null keeps each on its own. */
interface Batch {
  readonly level: string | null;
  readonly row: number;
  readonly rowsOn: number;
}

function batchesOf(chosen: readonly RunDocument[], asked: CopyAsked): Batch[] {
  const step = asked.step ?? rowsIn(chosen);
  const rows = Array.from({ length: asked.rows + 1 }, (_, row) => ({ row, rowsOn: row * step }));
  return [
    ...rows.slice(1).map((row) => ({ level: null, ...row })),
    ...asked.levels.flatMap((level) => rows.map((row) => ({ level, ...row }))),
  ];
}

/** How many rows lie between the first and the last of these, both counted. */
function rowsIn(runs: readonly RunDocument[]): number {
  const numbers = runs.map((run) => rowNumber(run.id, run.level)).filter((number) => number !== null);
  return numbers.length === 0 ? 1 : Math.max(...numbers) - Math.min(...numbers) + 1;
}

function copiesOf(chosen: readonly RunDocument[], batch: Batch, asked: CopyAsked): MadeRun[] {
  const placeOf = (run: RunDocument): NewPlace => ({
    level: batch.level ?? run.level,
    rowsOn: batch.rowsOn,
    side: run.side ?? null,
  });
  const ids = new Map(chosen.map((run) => [run.id, newId(run, placeOf(run), asked.names)]));
  const by = { xMm: batch.row * asked.pitch.xMm, yMm: batch.row * asked.pitch.yMm };
  return chosen.map((run) => ({ run: copyOf(shiftedRun(run, by), placeOf(run), ids, asked), from: run.id }));
}

function copyOf(run: RunDocument, place: NewPlace, ids: ReadonlyMap<string, string>, asked: CopyAsked): RunDocument {
  // What the floor put into one run says nothing about another.
  const { pairedRun, taps, fieldHold: _held, ...rest } = run;
  const partner = pairedRun === undefined ? undefined : ids.get(pairedRun);
  return {
    ...rest,
    id: ids.get(run.id) ?? run.id,
    level: place.level,
    ...(partner === undefined ? {} : { pairedRun: partner }),
    feed: feedOf(run, place, ids, asked.supply),
    ...(taps === undefined || !asked.taps ? {} : { taps: taps.map((tap) => tapOf(tap, run, place)) }),
  };
}

function feedOf(
  run: RunDocument,
  place: NewPlace,
  ids: ReadonlyMap<string, string>,
  pattern: string | null,
): RunDocument['feed'] {
  const { feed } = run;
  const parent = feed.fromRun === undefined ? undefined : ids.get(feed.fromRun);
  const supply =
    pattern !== null && feed.kind !== 'tee'
      ? filled(pattern, run, place)
      : feed.supply === undefined
        ? undefined
        : renamed(feed.supply, run, place);
  return {
    ...feed,
    ...(parent === undefined ? {} : { fromRun: parent }),
    ...(supply === undefined ? {} : { supply }),
  };
}

type Tap = NonNullable<RunDocument['taps']>[number];

function tapOf(tap: Tap, run: RunDocument, place: NewPlace): Tap {
  return {
    ...tap,
    id: renamed(tap.id, run, place),
    ...(tap.serves === undefined ? {} : { serves: renamed(tap.serves, run, place) }),
    ...(tap.pair === undefined ? {} : { pair: renamed(tap.pair, run, place) }),
  };
}

function askedFaults(job: JobDocument, chosen: readonly RunDocument[], asked: CopyAsked): Fault[] {
  return [
    ...rowFaults(asked),
    ...pitchFaults(asked),
    ...levelFaults(job, chosen, asked),
    ...sizeFaults(chosen, asked),
    ...namingFaults('names', asked.names),
    ...namingFaults('supply', asked.supply),
    ...branchFaults(chosen),
  ];
}

function rowFaults({ rows, levels }: CopyAsked): Fault[] {
  if (!Number.isInteger(rows))
    return [fault('rows', `${rows} rows cannot be made.`, `Write a whole number, 0 to ${MOST_ROWS}.`)];
  if (rows < 0) return [fault('rows', `${rows} further rows is less than none.`, `Write 1 to ${MOST_ROWS}.`)];
  if (rows > MOST_ROWS)
    return [fault('rows', `${rows} further rows is more than ${MOST_ROWS}.`, 'Copy them in several goes.')];
  if (rows === 0 && levels.length === 0)
    return [fault('rows', 'No further row and no other level: nothing would be made.', 'Give one of the two.')];
  return [];
}

function pitchFaults({ rows, pitch }: CopyAsked): Fault[] {
  if (!(rows > 0) || pitch.xMm !== 0 || pitch.yMm !== 0) return [];
  const remedy = 'Give the distance from row to row, east or north, or 0 further rows for other levels alone.';
  return [fault('pitch.xMm', 'With a pitch of 0 each copy would lie in the run it is made from.', remedy)];
}

function levelFaults(job: JobDocument, chosen: readonly RunDocument[], { levels }: CopyAsked): Fault[] {
  const known = new Set(job.levels.map((level) => level.id));
  const own = new Set(chosen.map((run) => run.level));
  return levels.flatMap((level, index) => {
    if (!known.has(level)) {
      const meant = nearestWord(level, [...known]);
      const remedy = meant ? `Did you mean ${meant}?` : 'Add the level under Settings first.';
      return [fault('levels', `The job has no level ${level}.`, remedy)];
    }
    if (levels.indexOf(level) !== index) return [fault('levels', `${level} is named twice.`, 'Name it once.')];
    if (own.has(level)) {
      const remedy = 'Leave it out: further rows on it are given by their number.';
      return [fault('levels', `${level} is a level that the runs hang on already.`, remedy)];
    }
    return [];
  });
}

function sizeFaults(chosen: readonly RunDocument[], { rows, levels }: CopyAsked): Fault[] {
  const count = chosen.length * (rows + levels.length * (rows + 1));
  if (!(rows >= 0 && rows <= MOST_ROWS) || count <= MOST_MADE) return [];
  return [fault('rows', `That is ${count} runs; ${MOST_MADE} are made at once at most.`, 'Copy in several goes.')];
}

/** A branch has no feed without its parent: it is copied with it or not at all. */
function branchFaults(chosen: readonly RunDocument[]): Fault[] {
  const ids = new Set(chosen.map((run) => run.id));
  const alone = chosen.filter((run) => run.feed.kind === 'tee' && !ids.has(parentOf(run) ?? ''));
  return cut(
    alone.map((run) => {
      const parent = parentOf(run);
      const remedy = `Tick ${parent} as well, take ${run.id} out, or give it a feed of its own first.`;
      return fault('runs', `${run.id} is a branch of ${parent}, which is not copied.`, remedy);
    }),
  );
}

function notesOn(chosen: readonly RunDocument[], made: readonly MadeRun[], { taps }: CopyAsked): string[] {
  const ids = new Set(chosen.map((run) => run.id));
  const left = chosen.filter((run) => run.pairedRun !== undefined && !ids.has(run.pairedRun));
  return [...partnerNotes(left), ...(taps ? servesNotes(chosen, made) : ['The copies have no tap-offs.'])];
}

function partnerNotes(left: readonly RunDocument[]): string[] {
  const [first] = left;
  if (first === undefined) return [];
  const whose = left.length === 1 ? first.id : `${first.id} and ${left.length - 1} more`;
  return [`The copies of ${whose} have no partner, since ${first.pairedRun} is not copied. Tick both to keep pairs.`];
}

/** Equipment that nothing in its name places: copies serve it word for word. */
function servesNotes(chosen: readonly RunDocument[], made: readonly MadeRun[]): string[] {
  const byId = new Map(chosen.map((run) => [run.id, run]));
  const same = made.flatMap(({ run, from }) =>
    (run.taps ?? []).filter((tap, index) => {
      const { serves } = byId.get(from)?.taps?.[index] ?? {};
      return serves !== undefined && serves !== '' && serves === tap.serves;
    }),
  );
  const [first] = same;
  if (first === undefined) return [];
  const count = same.length === 1 ? 'One tap-off keeps' : `${same.length} tap-offs keep`;
  return [
    `${count} what it serves word for word, such as “${first.serves}”: neither level nor row stands in it, so correct it in the copies.`,
  ];
}
