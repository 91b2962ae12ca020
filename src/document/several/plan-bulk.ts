import type { Fault } from '../fault.ts';
import type { JobDocument, RunDocument } from '../job-document.ts';
import { nearestWord } from '../parsing/nearest-word.ts';
import { bulkChanged, bulkValue } from './bulk-changed.ts';
import { BULK_FIELDS, type BulkAsked, type BulkField } from './bulk-schema.ts';
import { absentFaults, fault } from './plan-faults.ts';

/** One field of one run, as it is and as it would be; null is what is not stated. */
export interface BulkDifference {
  readonly run: string;
  readonly field: BulkField;
  readonly from: unknown;
  readonly to: unknown;
}

export type BulkPlan =
  | {
      readonly ok: true;
      /** Only runs that differ. */
      readonly changed: readonly RunDocument[];
      readonly differences: readonly BulkDifference[];
      /** Runs that have all of it already. */
      readonly same: number;
      readonly notes: readonly string[];
    }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** What a change to many runs would come to, run by run and field by field. `taken` and `job` as for copies. */
export function planBulk(job: JobDocument, taken: ReadonlySet<string>, { runs, set }: BulkAsked): BulkPlan {
  const faults = [...absentFaults(runs, taken), ...setFaults(job, set)];
  if (faults.length > 0) return { ok: false, faults };
  const asked = new Set(runs);
  const chosen = job.runs.filter((run) => asked.has(run.id));
  const after = chosen.map((run) => bulkChanged(run, set));
  const differences = chosen.flatMap((run, index) => differencesOf(run, after[index] ?? run));
  const differing = new Set(differences.map(({ run }) => run));
  return {
    ok: true,
    changed: after.filter((run) => differing.has(run.id)),
    differences,
    same: chosen.length - differing.size,
    notes: notesOn(chosen, differing, differences),
  };
}

function differencesOf(before: RunDocument, after: RunDocument): BulkDifference[] {
  return BULK_FIELDS.flatMap((field) => {
    const [from, to] = [bulkValue(before, field), bulkValue(after, field)];
    return JSON.stringify(from) === JSON.stringify(to) ? [] : [{ run: before.id, field, from, to }];
  });
}

function setFaults(job: JobDocument, set: BulkAsked['set']): Fault[] {
  if (Object.keys(set).length === 0)
    return [
      fault('set', 'No field is filled in, so nothing would change.', 'Fill in what all of the runs shall have.'),
    ];
  return [
    ...knownFaults('level', 'level', set.level, new Set(job.levels.map(({ id }) => id))),
    ...knownFaults('type', 'busway type', set.type, new Set(job.buswayTypes.map(({ id }) => id))),
  ];
}

function knownFaults(field: string, noun: string, value: string | undefined, known: ReadonlySet<string>): Fault[] {
  if (value === undefined || known.has(value)) return [];
  const meant = nearestWord(value, [...known]);
  const remedy = meant ? `Did you mean ${meant}?` : `Add the ${noun} under Settings first.`;
  return [fault(`set.${field}`, `The job has no ${noun} ${value}.`, remedy)];
}

function notesOn(
  chosen: readonly RunDocument[],
  differing: ReadonlySet<string>,
  differences: readonly BulkDifference[],
): string[] {
  const moved = differences.filter(({ field }) => field === 'level');
  const branches = chosen.filter((run) => run.feed.kind === 'tee' && differing.has(run.id));
  const raised = differences.filter(
    ({ field, run }) => field === 'elevationMm' && branches.some(({ id }) => id === run),
  );
  return [
    ...(moved.length === 0
      ? []
      : [
          `Names stay: ${moved[0]?.run} keeps its name on level ${String(moved[0]?.to)}. Rename what carries the level in it.`,
        ]),
    ...(raised.length === 0
      ? []
      : [
          `${raised[0]?.run} is a branch and hangs where its tee stands, whatever its own height above the floor says.`,
        ]),
  ];
}
