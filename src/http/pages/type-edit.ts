import { BuswayTypePage } from '../../../views/pages/settings/busway-type.tsx';
import { typeEntryWord } from '../../../views/words/type-entries.ts';
import { changeBuswayType, createBuswayType, getBuswayType, removeBuswayType } from '../../actions/busway-types.ts';
import type { Context } from '../../actions/context.ts';
import type { BuswayTypeDocument } from '../../document/job-document.ts';
import { readTypeForm, writeTypeForm } from '../../document/type-form.ts';
import type { App } from '../app-type.ts';
import { lengthExample } from './settings/fragment.ts';
import { partForm } from './settings/part-form.ts';

/** A busway type as a form. */
export function typeEdit(app: App, context: Context): void {
  partForm<BuswayTypeDocument>(app, context, {
    at: 'types',
    addTitle: 'Add a busway type',
    titleOf: (type) => `Busway type ${type.id}`,
    savedWords: (type) => `Busway type ${type.id} is saved; runs of it are laid out anew.`,
    removedWords: 'The busway type is removed.',
    removal: {
      what: (type) => `type ${type.id}`,
      question: 'It leaves the job. A type that runs are made of is kept.',
    },
    wordOf: typeEntryWord,
    // What a sheet that says nothing of it has.
    blank: { poles: '3', neutral: 'full', 'fittings.elbow.handed': 'yes', 'fittings.tee.handed': 'yes' },
    read: (...typed) => {
      const { type: part, faults } = readTypeForm(...typed);
      return { part, faults };
    },
    write: writeTypeForm,
    get: getBuswayType,
    create: createBuswayType,
    change: changeBuswayType,
    remove: removeBuswayType,
    page: (props, { units, currency }) => BuswayTypePage({ ...props, example: lengthExample(units), currency }),
  });
}
