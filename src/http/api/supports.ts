import { listSupports } from '../../actions/cards/lists.ts';
import { supportRowSchema } from '../../actions/cards/rows.ts';
import { getSupportCard } from '../../actions/cards.ts';
import type { Context } from '../../actions/context.ts';
import { SUPPORT_STATES } from '../../domain/quality/states.ts';
import type { App } from '../app-type.ts';
import { printSupport, supportCardSchema } from './cards/support-card.ts';
import { floorNoun } from './floor-noun.ts';

export function supports(app: App, context: Context): void {
  floorNoun(app, context, {
    path: 'supports',
    tag: 'Supports',
    one: 'hanger',
    states: SUPPORT_STATES,
    row: supportRowSchema,
    card: supportCardSchema,
    list: listSupports,
    get: getSupportCard,
    print: printSupport,
  });
}
