import type { UnitSystem } from '../../src/domain/model.ts';
import type { RodPlan } from '../../src/domain/takeoff/plan-rods.ts';
import { formatLength } from '../../src/domain/units/format-length.ts';

/**
 * What a cutting plan of hanger rods says beside its table: how many sticks, whether fewer would do, and where the total
 * length alone would have bought too few. "12 rods of 6'-9\" need 12 sticks of 10'-0\", not 9."
 */
export function rodPlanWords({ rod, plan }: RodPlan, units: UnitSystem): string {
  const proof = plan.proven ? 'no fewer will do' : `at least ${plan.least} are needed`;
  const left = `${formatLength(plan.waste, units)} left over, the saw’s cut not counted`;
  return `${rod ?? 'Rod'}: ${plan.sticks} sticks, ${proof}; ${left}.${byTotalWords(plan, units)}`;
}

/** Rods are no running length: what is left of a stick is often too short for the next rod. */
function byTotalWords({ stock, sticks, waste, patterns }: RodPlan['plan'], units: UnitSystem): string {
  const byTotal = Math.ceil((sticks * stock - waste) / stock);
  if (byTotal >= sticks) return '';
  const pieces = patterns.flatMap(({ times, pieces }) =>
    pieces.map(({ count, length }) => ({ rods: times * count, length })),
  );
  const rods = pieces.reduce((sum, piece) => sum + piece.rods, 0);
  const [first] = pieces;
  const isOneLength = pieces.every(({ length }) => length === first?.length);
  const of = first !== undefined && isOneLength ? ` of ${formatLength(first.length, units)}` : '';
  return ` ${rods} rods${of} need ${sticks} sticks of ${formatLength(stock, units)}, not the ${byTotal} that their total length would give.`;
}
