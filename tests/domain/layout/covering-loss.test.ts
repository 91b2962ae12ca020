import { describe, expect, it } from 'vitest';
import { contextFor } from '../../../src/domain/layout/context-for.ts';
import { lossWords } from '../../../src/domain/layout/covering-loss.ts';
import { coverings } from '../../../src/domain/layout/coverings.ts';
import { sayIn } from '../../../src/domain/layout/say.ts';
import type { BuswayType, Run } from '../../../src/domain/model.ts';
import { formatMoney } from '../../../src/domain/units/money.ts';
import { aJob, feet } from '../../support/job.ts';
import { layoutType, lengthsOf, straightRun } from './l-run.ts';

const money = (minor: number) => formatMoney(minor, 'USD');
const say = sayIn('ft-in');

/** Invented prices, worked by hand: 20 ft $100, 10 ft $55, 5 ft $30, a joint kit $10. */
function priced(prices: Partial<BuswayType['prices']> = {}): BuswayType {
  const type = layoutType();
  const sections = [
    { length: feet(20), price: 10_000 },
    { length: feet(10), price: 5_500 },
    { length: feet(5), price: 3_000 },
  ];
  return { ...type, prices: { ...type.prices, sections, jointKit: 1_000, ...prices } };
}

function ranked(run: Run, type: BuswayType) {
  return coverings(run, contextFor(aJob({ types: [type], runs: [run] }), run)).coverings;
}

function told(run: Run, type: BuswayType, withMoney = true) {
  return ranked(run, type).map(({ loss }) => loss && lossWords(loss, say, withMoney ? money : null));
}

describe('why a covering lost', () => {
  it('is the order of the same pieces, then one joint more and dearer pieces: $10 and 30 + 30 − 55 = $5', () => {
    const run = straightRun(30);
    expect(ranked(run, priced()).map(({ pieces }) => lengthsOf(pieces))).toEqual([
      [20, 10],
      [10, 20],
      [20, 5, 5],
    ]);
    expect(told(run, priced())).toEqual([
      null,
      `Same cost and joints, in another order: at 0" it has 10'-0" where the winner has 20'-0", and longer pieces go nearer the feed.`,
      '$15.00 more: one joint more (3 for 2) and its pieces cost $5.00 more.',
    ]);
  });

  it('is told without an amount to those who see none', () => {
    expect(told(straightRun(30), priced(), false)[2]).toBe(
      'Costs more: one joint more (3 for 2) and its pieces cost more.',
    );
  });

  it('weighs what it saves against what it costs', () => {
    const cheapFives = priced({
      sections: [
        { length: feet(10), price: 5_500 },
        { length: feet(5), price: 2_500 },
      ],
    });
    const tens = { ...cheapFives, stockLengths: [feet(10), feet(5)] };
    // One of 10 ft and a kit: $65; two of 5 ft and two kits: $70.
    expect(told(straightRun(10), tens)[1]).toBe(
      '$5.00 more: one joint more (2 for 1), though its pieces cost $5.00 less.',
    );
  });

  it('without prices is the joints alone', () => {
    expect(told(straightRun(20), layoutType())[1]).toBe('Same cost, one joint more (2 for 1).');
  });

  it('is the end that is farther from the length drawn, where nothing costs anything', () => {
    const run = straightRun(20, { end: { reach: feet(15), hardStop: feet(25) } });
    const type = { ...layoutType(), stockLengths: [feet(20), feet(15)] };
    expect(told(run, type)).toEqual([null, `Same cost, but it ends 5'-0" from the length drawn, the winner 0".`]);
  });

  it('of a run that no section fits is not asked for', () => {
    expect(ranked(straightRun(61), { ...layoutType(), stockLengths: [feet(20)] })).toEqual([]);
  });
});
