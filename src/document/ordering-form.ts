import { SIZE } from '../domain/units/parse-length.ts';
import { type Entered, type EntryOf, length, number, text } from './form/entries.ts';
import { readFragment, writeFragment } from './form/fragment-form.ts';
import { type EntryLog, newLog } from './form/read-entry.ts';
import { closeRows, type RowsOf, readRowForm, writeRowForm } from './form/row-form.ts';
import type { OrderingDocument, ProjectDocument } from './job-document.ts';

const HEAD: readonly EntryOf[] = [
  text('plan'),
  { path: 'cordStockMm', reading: { kind: 'lengths', range: SIZE } },
  length('closure.stockMm', SIZE),
  number('closure.wastePercent'),
  number('washersPerRod'),
  number('braceEverySupports'),
];

export const SPARE_ROWS: RowsOf = {
  group: 'spares',
  entries: [
    text('item'),
    text('type'),
    text('kind'),
    text('hand'),
    length('lengthMm', SIZE),
    number('wastePercent'),
    number('percent'),
    number('minimum'),
    number('ownerSpares'),
  ],
};

export const LEAD_ROWS: RowsOf = { group: 'leadDays', entries: [text('item'), number('days')] };

export const TOOL_ROWS: RowsOf = {
  group: 'tools',
  entries: [text('tool'), number('perCrew'), text('activity'), number('crews'), text('note')],
};

type Project = Pick<ProjectDocument, 'units' | 'currency'>;

/** The rules for ordering as the texts of their form. */
export function writeOrderingForm(ordering: OrderingDocument, project: Project): Entered {
  return {
    ...writeFragment(ordering, HEAD, project),
    ...writeRowForm(ordering.spares ?? [], SPARE_ROWS, project),
    ...writeRowForm(ordering.leadDays ?? [], LEAD_ROWS, project),
    ...writeRowForm(ordering.tools ?? [], TOOL_ROWS, project),
  };
}

/**
 * What was typed, for the document's own check, and the texts with empty rows taken out, whose names its faults use.
 * The tools that are listed are those that are wanted, none included; other lists that stay empty are left out.
 */
export function readOrderingForm(
  entered: Entered,
  project: Project,
): Pick<EntryLog, 'faults' | 'questions'> & { readonly ordering: OrderingDocument; readonly fields: Entered } {
  const fields = closeRows(entered, [SPARE_ROWS, LEAD_ROWS, TOOL_ROWS]);
  const log = newLog(project);
  const lists = [SPARE_ROWS, LEAD_ROWS].map((rows) => [rows.group, readRowForm(fields, rows, log)] as const);
  const draft = {
    ...readFragment(fields, HEAD, null, log),
    ...Object.fromEntries(lists.filter(([, rows]) => rows.length > 0)),
    tools: readRowForm(fields, TOOL_ROWS, log),
  };
  return { ordering: draft as unknown as OrderingDocument, fields, faults: log.faults, questions: log.questions };
}
