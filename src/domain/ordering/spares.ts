import { groupBy } from '../takeoff/group-by.ts';
import type { OrderThing } from './order-things.ts';
import type { SpareRule } from './ordering.ts';

/** What is ordered of one thing beyond what the job takes in: for breakage, as spares of the work, and for the owner. */
export interface SpareLine extends Omit<OrderThing, 'level' | 'quantity'> {
  readonly rule: SpareRule;
  /** What the whole job takes in. */
  readonly needed: number;
  readonly waste: number;
  readonly spare: number;
  readonly owner: number;
}

export interface Spares {
  readonly lines: readonly SpareLine[];
  /** Rules that fit nothing that is counted: nothing is ordered by them. */
  readonly idle: readonly SpareRule[];
}

/**
 * Spares by rule, for each thing over the whole job (an elbow of each hand is a thing of its own): the greater of the
 * stated minimum and the percentage of what is taken in, rounded up to whole pieces. Waste is rounded up by itself, and
 * the owner's spares stand apart. Metres are rounded up to the millimetre.
 *
 * Source: the usual words of a specification, "whichever is greater"; the owner's apart.
 * Example: 384 clamps, 5 % and at least 10: 19.2, so 20; of 48 end caps 5 % are 2.4, so 10.
 */
export function sparesOf(things: readonly OrderThing[], rules: readonly SpareRule[]): Spares {
  const used = new Set<SpareRule>();
  const groups = groupBy(things, ({ item, kind, hand, length, type, unit }) =>
    JSON.stringify([item, kind, hand, length, type, unit]),
  );
  const lines = groups.flatMap((group): SpareLine[] => {
    const rule = rules.find((one) => fits(one, group[0]));
    if (rule === undefined) return [];
    used.add(rule);
    const needed = group.reduce((sum, { quantity }) => sum + quantity, 0);
    const { level: _level, quantity: _quantity, ...thing } = group[0];
    const up = thing.unit === 'm' ? 1_000 : 1;
    return [
      {
        ...thing,
        parts: group.flatMap(({ parts }) => parts),
        rule,
        needed,
        waste: partOf(needed, rule.wastePercent, up),
        spare: Math.max(rule.minimum, partOf(needed, rule.percent, up)),
        owner: rule.ownerSpares,
      },
    ];
  });
  return { lines, idle: rules.filter((rule) => !used.has(rule)) };
}

function fits(rule: SpareRule, thing: OrderThing): boolean {
  return (
    rule.item === thing.item &&
    (rule.type === null || rule.type === thing.type) &&
    (rule.kind === null || rule.kind === thing.kind) &&
    (rule.hand === null || rule.hand === thing.hand) &&
    (rule.length === null || rule.length === thing.length)
  );
}

/** A percentage rounded up to `1 / up`; a thousandth of a millionth is the noise of the division. */
function partOf(needed: number, percent: number, up: number): number {
  return Math.max(0, Math.ceil(((needed * percent) / 100) * up - 1e-6)) / up;
}
