import { type Entered, money, number, text } from './form/entries.ts';
import { type EntryLog, newLog } from './form/read-entry.ts';
import { closeRows, type RowsOf, readRowForm, writeRowForm } from './form/row-form.ts';
import type { JobDocument, ProjectDocument } from './job-document.ts';

export type Extras = NonNullable<JobDocument['extras']>;
type Project = Pick<ProjectDocument, 'units' | 'currency'>;

export const EXTRA_ROWS: RowsOf = {
  group: 'extras',
  entries: [
    text('item'),
    text('level'),
    number('quantity'),
    text('unit'),
    money('price'),
    number('hours'),
    text('note'),
  ],
};

/** The lines that were added by hand as the texts of their rows. */
export function writeExtrasForm(extras: Extras, project: Project): Entered {
  return writeRowForm(extras, EXTRA_ROWS, project);
}

/** What was typed, for the document's own check, and the texts with empty rows taken out. */
export function readExtrasForm(
  entered: Entered,
  project: Project,
): Pick<EntryLog, 'faults' | 'questions'> & { readonly extras: Extras; readonly fields: Entered } {
  const fields = closeRows(entered, [EXTRA_ROWS]);
  const log = newLog(project);
  const extras = readRowForm(fields, EXTRA_ROWS, log) as unknown as Extras; // the action checks the whole of it
  return { extras, fields, faults: log.faults, questions: log.questions };
}
