import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sumTakeoff } from '../../../src/domain/takeoff/sum-takeoff.ts';
import { takeOff } from '../../../src/domain/takeoff/take-off.ts';
import { bidScenario } from '../../support/bid-scenario.ts';
import { feet } from '../../support/job.ts';

const { job, layouts } = bidScenario();
const takeoff = takeOff(job, layouts);

test('48 runs of four joints and two clamps a joint are one line of 384 clamps over the job', () => {
  const clamps = sumTakeoff(takeoff, 'job').filter(({ item }) => item === 'clamp');
  expect(clamps).toMatchObject([{ run: null, level: null, quantity: 384, places: [] }]);
  expect(clamps[0]?.parts).toHaveLength(48);
});

test('a floor of the scenario holds 36 sections of 20 ft, 12 of 10 ft, 48 contact sets and 240 tap-offs', () => {
  const floor = sumTakeoff(takeoff, 'level').filter(({ level }) => level === 'L2');
  const counts = floor.map(({ item, length, quantity }) => [item, length, quantity]);
  expect(counts).toContainEqual(['section', feet(20), 36]);
  expect(counts).toContainEqual(['section', feet(10), 12]);
  expect(counts).toContainEqual(['contact-set', null, 48]);
  expect(counts).toContainEqual(['tap', null, 240]);
});

test('slot to close adds up to whole millimetres over many runs', () => {
  const slot = sumTakeoff(takeoff, 'job').find(({ item }) => item === 'slot-closure');
  expect(slot?.quantity).toBe(731.52);
});

test('no way of adding up loses or doubles anything', () => {
  const total = (lines: readonly { item: string; quantity: number }[]) =>
    lines.filter(({ item }) => item !== 'slot-closure').reduce((sum, { quantity }) => sum + quantity, 0);
  for (const by of ['run', 'level', 'job'] as const) {
    const summed = sumTakeoff(takeoff, by);
    expect(total(summed)).toBe(total(takeoff));
    expect(summed.flatMap(({ parts }) => parts)).toHaveLength(takeoff.length);
  }
});

test('however the runs are split into floors, levels add up to the job, and so do runs with the lines of the whole job', () => {
  const key = ({ item, kind, hand, length, type, unit }: (typeof takeoff)[number]) =>
    JSON.stringify([item, kind, hand, length, type, unit]);
  const sums = (lines: readonly (typeof takeoff)[number][]) => {
    const found = new Map<string, number>();
    for (const line of lines) found.set(key(line), (found.get(key(line)) ?? 0) + line.quantity);
    // Metres are decimals: nine places are a thousandth of the finest length.
    return [...found].map(([name, sum]) => [name, Number(sum.toFixed(9))]).sort();
  };
  const whole = sums(takeoff);
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 1, max: 7 }), { minLength: 48, maxLength: 48 }), (floors) => {
      const split = { ...job, runs: job.runs.map((run, i) => ({ ...run, level: `F${floors[i]}` })) };
      const counted = takeOff(split, layouts);
      for (const by of ['job', 'level', 'run'] as const) expect(sums(sumTakeoff(counted, by))).toEqual(whole);
    }),
    { numRuns: 15 },
  );
});
