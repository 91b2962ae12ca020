import { COORDINATE, DISTANCE, SIZE } from '../domain/units/parse-length.ts';
import { type Entered, type EntryOf, length, number, text, tick } from './form/entries.ts';
import { readFragment, writeFragment } from './form/fragment-form.ts';
import { type EntryLog, newLog } from './form/read-entry.ts';
import type { LevelDocument, ProjectDocument } from './job-document.ts';

const ENTRIES: readonly EntryOf[] = [
  text('id'),
  text('name'),
  number('order'),
  length('elevationMm', COORDINATE),
  length('structureHeightMm', SIZE),
  length('conditions.mountingHeightMm', DISTANCE),
  text('conditions.congestion'),
  number('conditions.storeysAboveGrade'),
  tick('conditions.liveArea'),
];

type Project = Pick<ProjectDocument, 'units' | 'currency'>;

export function writeLevelForm(level: LevelDocument, project: Project): Entered {
  return writeFragment(level, ENTRIES, project);
}

/** A level as typed, for the job document's own check. */
export function readLevelForm(
  entered: Entered,
  project: Project,
  before: LevelDocument | null,
): Pick<EntryLog, 'faults' | 'questions'> & { readonly level: LevelDocument } {
  const log = newLog(project);
  const draft = readFragment(entered, ENTRIES, before, log);
  return { level: draft as unknown as LevelDocument, faults: log.faults, questions: log.questions };
}
