import type { Context } from '../../actions/context.ts';
import { changeLevel, createLevel, getLevel, levelViewSchema, listLevels, removeLevel } from '../../actions/levels.ts';
import { levelSchema } from '../../document/job-document.ts';
import type { App } from '../app-type.ts';
import { crud, list } from './crud.ts';

export function levels(app: App, context: Context): void {
  const noun = {
    path: 'levels',
    tag: 'Levels',
    one: 'level',
    body: levelSchema,
    view: levelViewSchema,
    get: getLevel,
    create: createLevel,
    change: changeLevel,
    remove: removeLevel,
  };
  list(app, context, noun, listLevels);
  crud(app, context, noun);
}
