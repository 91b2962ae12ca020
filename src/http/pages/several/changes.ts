import { ChangesPage } from '../../../../views/pages/several/changes.tsx';
import { BULK_WORDS } from '../../../../views/words/bulk-fields.ts';
import { type BulkPreview, changeTogether, previewChanges } from '../../../actions/run-changes.ts';
import type { EntryFault } from '../../../document/form/entries.ts';
import type { JobDocument } from '../../../document/job-document.ts';
import { type BulkAsked, bulkSetSchema } from '../../../document/several/bulk-schema.ts';
import { readBulkForm } from '../../../document/several/read-bulk-form.ts';
import type { Round } from './round.ts';
import type { Typed } from './typed.ts';

/** Fields of many runs changed together. */
export const CHANGES: Round<BulkAsked, BulkPreview> = {
  name: 'changes',
  fresh: {},
  title: () => 'Change runs together',
  words: {
    ...BULK_WORDS,
    runs: 'Runs',
    pitchMm: 'Distance between its lines',
    offsetMm: 'First line at',
    shortMm: 'It may end short by',
    longMm: 'It may end long by',
  },
  fieldOf,
  read: readAsked,
  preview: previewChanges,
  write: async (...asked) => {
    const { changed, released } = await changeTogether(...asked);
    const said = changed.length === 1 ? `Run ${changed[0]} is changed` : `${changed.length} runs are changed`;
    const draft = released.length === 0 ? '' : ` ${released.length} of them in draft only: the floor has a release.`;
    return `${said} and laid out anew.${draft}`;
  },
  page: ({ context, job, typed, form, writePath, preview }) =>
    ChangesPage({
      ...form,
      levels: job.levels.map((level) => ({ value: level.id, word: `${level.id}, ${level.name}` })),
      types: job.buswayTypes.map((type) => ({ value: type.id, word: `${type.id}, ${type.ratedCurrentA} A` })),
      example: job.project.units === 'ft-in' ? `9'-3" or 2820 mm` : '2800 or 2.8 m',
      preview:
        preview === undefined
          ? null
          : {
              ...preview,
              action: writePath,
              csrf: form.csrf,
              submissionId: context.newId(),
              units: job.project.units,
              carried: typed,
              seen: JSON.stringify(preview.seen),
            },
    }),
};

/** The form by the schema that the API reads too; its faults stand beside the fields that were typed into. */
function readAsked(typed: Typed, job: JobDocument): { asked: BulkAsked; faults: readonly EntryFault[] } {
  const { set, faults } = readBulkForm(typed.fields, job.project);
  const parsed = bulkSetSchema.safeParse(set);
  if (parsed.success) return { asked: { runs: [...typed.runs], set: parsed.data }, faults };
  const shape = parsed.error.issues.map((issue) => ({
    field: fieldOf(issue.path.join('.')),
    said: `${issue.message}. Correct it, or leave the field empty.`,
  }));
  return { asked: { runs: [...typed.runs], set: {} }, faults: [...faults, ...shape] };
}

/** The field that a path of the change was typed into. */
function fieldOf(path: string): string {
  const [first = '', last = first] = path.replace(/^set\.?/, '').split('.');
  if (first === '') return 'level';
  return first === 'structure' || first === 'end' ? last : first;
}
