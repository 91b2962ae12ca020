import { listJoints } from '../../actions/cards/lists.ts';
import { jointRowSchema } from '../../actions/cards/rows.ts';
import { getJointCard } from '../../actions/cards.ts';
import type { Context } from '../../actions/context.ts';
import { JOINT_STATES } from '../../domain/quality/states.ts';
import type { App } from '../app-type.ts';
import { jointCardSchema, printJoint } from './cards/joint-card.ts';
import { floorNoun } from './floor-noun.ts';

export function joints(app: App, context: Context): void {
  floorNoun(app, context, {
    path: 'joints',
    tag: 'Joints',
    one: 'joint',
    states: JOINT_STATES,
    row: jointRowSchema,
    card: jointCardSchema,
    list: listJoints,
    get: getJointCard,
    print: printJoint,
  });
}
