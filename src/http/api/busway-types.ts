import {
  buswayTypeViewSchema,
  changeBuswayType,
  createBuswayType,
  getBuswayType,
  listBuswayTypes,
  removeBuswayType,
} from '../../actions/busway-types.ts';
import type { Context } from '../../actions/context.ts';
import { buswayTypeSchema } from '../../document/job-document.ts';
import type { App } from '../app-type.ts';
import { crud, list } from './crud.ts';

export function buswayTypes(app: App, context: Context): void {
  const noun = {
    path: 'busway-types',
    tag: 'Busway types',
    one: 'busway type',
    body: buswayTypeSchema,
    view: buswayTypeViewSchema,
    get: getBuswayType,
    create: createBuswayType,
    change: changeBuswayType,
    remove: removeBuswayType,
  };
  list(app, context, noun, listBuswayTypes);
  crud(app, context, noun);
}
