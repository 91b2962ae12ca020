import { listTaps } from '../../actions/cards/lists.ts';
import { tapRowSchema } from '../../actions/cards/rows.ts';
import { getTapCard } from '../../actions/cards.ts';
import type { Context } from '../../actions/context.ts';
import { TAP_STATES } from '../../domain/quality/states.ts';
import type { App } from '../app-type.ts';
import { printTap, tapCardSchema } from './cards/tap-card.ts';
import { floorNoun } from './floor-noun.ts';

export function taps(app: App, context: Context): void {
  floorNoun(app, context, {
    path: 'taps',
    tag: 'Taps',
    one: 'tap-off',
    states: TAP_STATES,
    row: tapRowSchema,
    card: tapCardSchema,
    list: listTaps,
    get: getTapCard,
    print: printTap,
  });
}
