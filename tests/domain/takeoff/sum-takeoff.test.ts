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
