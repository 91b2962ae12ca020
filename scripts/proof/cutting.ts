import { type CutPieces, type CuttingPlan, planCuts } from '../../src/domain/takeoff/cutting-plan.ts';
import { fewestSticksBySubsets } from '../../tests/proof/reference/sticks.ts';
import { type Dice, dice } from './dice.ts';
import type { Outcome, Proof } from './proof.ts';

export const cutting: Proof = {
  name: 'cutting',
  says: 'sticks to buy, against a table over all subsets of the pieces; each pattern fits, and all pieces are yielded',
  fullCount: 20_000,
  shortCount: 120,
  run: ({ count, seed }) => proveCuts(count, seed),
};

type Plan = (stock: number, pieces: readonly CutPieces[]) => CuttingPlan;

export function proveCuts(count: number, seed: number, plan: Plan = planCuts): Outcome {
  const failures: string[] = [];
  let [severalLengths, aboveFloor] = [0, 0];
  for (let i = 0; i < count; i += 1) {
    const { stock, lengths } = cuttingInstance(dice(seed, i));
    const pieces = lengths.map((length) => ({ length, count: 1 }));
    const expected = fewestSticksBySubsets(stock, lengths);
    const found = plan(stock, pieces);
    severalLengths += new Set(lengths).size > 2 ? 1 : 0;
    const total = lengths.reduce((sum, length) => sum + length, 0);
    aboveFloor += expected > Math.ceil(total / stock) ? 1 : 0;
    const fault = faultOf(stock, lengths, expected, found);
    if (fault !== null) failures.push(`instance ${i}: ${fault}, stock ${stock}, pieces ${lengths}`);
  }
  const note = `${severalLengths} of three lengths or more; ${aboveFloor} where the total length over the stock would buy too few`;
  return { compared: count, failures, note };
}

/** Up to 13 pieces of up to 7 lengths; some near a half or a third of the stock, where packing is hard. */
function cuttingInstance(dice: Dice): { stock: number; lengths: number[] } {
  const stock = dice.pick([3048, 6096, 120, 97, 60]);
  const around = () => {
    const part = stock / dice.pick([2, 3, 4]);
    return Math.max(1, Math.min(stock, Math.round(part * (0.7 + dice.int(0, 60) / 100))));
  };
  const kinds = Array.from({ length: dice.int(1, 7) }, () => (dice.chance(60) ? around() : dice.int(1, stock)));
  return { stock, lengths: Array.from({ length: dice.int(1, 13) }, () => dice.pick(kinds)) };
}

function faultOf(stock: number, lengths: readonly number[], expected: number, plan: CuttingPlan): string | null {
  if (plan.sticks !== expected) return `expected ${expected} sticks, planned ${plan.sticks}`;
  if (!plan.proven) return 'the plan is not proven though it is the best';
  if (plan.least !== expected) return `the bound is ${plan.least} where ${expected} was shown`;
  const tooLong = plan.patterns.find(({ pieces }) => lengthOf(pieces) > stock);
  if (tooLong !== undefined) return `a pattern of ${lengthOf(tooLong.pieces)} is longer than the stock`;
  const times = plan.patterns.reduce((sum, pattern) => sum + pattern.times, 0);
  if (times !== plan.sticks) return `the patterns are cut ${times} times out of ${plan.sticks} sticks`;
  const yielded = plan.patterns.flatMap(({ times: n, pieces }) =>
    pieces.flatMap(({ length, count }) => Array.from({ length: n * count }, () => length)),
  );
  const sorted = (list: readonly number[]) => [...list].sort((a, b) => a - b).join();
  if (sorted(yielded) !== sorted(lengths)) return `the patterns yield ${yielded}`;
  const waste = plan.sticks * stock - lengths.reduce((sum, length) => sum + length, 0);
  return plan.waste === waste ? null : `the waste is ${waste}, not ${plan.waste}`;
}

function lengthOf(pieces: readonly CutPieces[]): number {
  return pieces.reduce((sum, { length, count }) => sum + length * count, 0);
}
