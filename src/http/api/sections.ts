import { listSections } from '../../actions/cards/lists.ts';
import { sectionRowSchema } from '../../actions/cards/rows.ts';
import { getPieceCard } from '../../actions/cards.ts';
import type { Context } from '../../actions/context.ts';
import { PIECE_STATES } from '../../domain/quality/states.ts';
import type { App } from '../app-type.ts';
import { printSection, sectionCardSchema } from './cards/section-card.ts';
import { floorNoun } from './floor-noun.ts';

/** Sections and fittings: the pieces of a run. */
export function sections(app: App, context: Context): void {
  floorNoun(app, context, {
    path: 'sections',
    tag: 'Sections',
    one: 'section or fitting',
    states: PIECE_STATES,
    row: sectionRowSchema,
    card: sectionCardSchema,
    list: listSections,
    get: getPieceCard,
    print: printSection,
  });
}
