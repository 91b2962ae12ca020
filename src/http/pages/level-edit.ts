import { LevelPage } from '../../../views/pages/settings/level.tsx';
import { levelEntryWord } from '../../../views/words/level-entries.ts';
import type { Context } from '../../actions/context.ts';
import { changeLevel, createLevel, getLevel, removeLevel } from '../../actions/levels.ts';
import type { LevelDocument } from '../../document/job-document.ts';
import { readLevelForm, writeLevelForm } from '../../document/level-form.ts';
import type { App } from '../app-type.ts';
import { lengthExample } from './settings/fragment.ts';
import { partForm } from './settings/part-form.ts';

/** A level as a form. */
export function levelEdit(app: App, context: Context): void {
  partForm<LevelDocument>(app, context, {
    at: 'levels',
    addTitle: 'Add a level',
    titleOf: (level) => `Level ${level.id}`,
    savedWords: (level) => `Level ${level.id} is saved.`,
    removedWords: 'The level is removed.',
    removal: {
      what: (level) => `level ${level.id}`,
      question: 'It leaves the job. A level that runs hang on is kept.',
    },
    wordOf: levelEntryWord,
    blank: {},
    read: (...typed) => {
      const { level: part, faults } = readLevelForm(...typed);
      return { part, faults };
    },
    write: writeLevelForm,
    get: getLevel,
    create: createLevel,
    change: changeLevel,
    remove: removeLevel,
    page: (props, { units }) => LevelPage({ ...props, example: lengthExample(units) }),
  });
}
