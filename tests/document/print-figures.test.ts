import { expect, test } from 'vitest';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import { printFigures } from '../../src/document/print-figures.ts';
import { toModel } from '../../src/document/to-model.ts';
import { figures } from '../../src/domain/figures.ts';
import { scenarioT1, scenarioT1AsDrawn, scenarioT2 } from '../support/scenarios.ts';

const print = (document: Parameters<typeof toModel>[0]) => printFigures(figures(toModel(document)));
const bid = print(scenarioT2());

test('the keys are those of busway-figures/1, in its order', () => {
  expect(Object.keys(bid)).toEqual(['format', 'runs', 'takeoff', 'labour', 'bid', 'checks']);
  expect(bid.format).toBe('busway-figures/1');
  expect(Object.keys(bid.runs[0]!)).toEqual(['id', 'lengthMm', 'layout', 'electrical', 'failover']);
  expect(Object.keys(bid.runs[0]!.layout)).toEqual(['ok', 'sections', 'joints', 'supports', 'facing']);
  expect(Object.keys(bid.runs[0]!.layout.sections[0]!)).toEqual(['fromMm', 'toMm', 'kind', 'hand']);
  expect(Object.keys(bid.runs[0]!.layout.supports[0]!)).toEqual(['atMm', 'loadKg', 'continuousLoadKg']);
  expect(Object.keys(bid.runs[0]!.layout.facing[0]!)).toEqual(['leg', 'compassDeg', 'relative']);
  expect(Object.keys(bid.labour!)).toEqual(['hours', 'byActivity', 'byLevel', 'byRun', 'costPerProductiveHour']);
  expect(Object.keys(bid.labour!.hours)).toEqual(['likely', 'mean', 'sd', 'p10', 'p50', 'p80', 'p90']);
  expect(Object.keys(bid.checks[0]!)).toEqual(['rule', 'severity', 'run', 'atMm', 'message', 'source']);
});

test('a takeoff line shows kind, hand and length only where it has them', () => {
  const { takeoff } = print(scenarioT1());
  expect(takeoff[0]).toEqual({
    item: 'section',
    kind: 'stock',
    lengthMm: 6096,
    run: 'F1-R05-A',
    level: 'F1',
    quantity: 3,
    unit: 'each',
  });
  expect(Object.keys(takeoff.find(({ item }) => item === 'elbow')!)).toEqual([
    'item',
    'hand',
    'run',
    'level',
    'quantity',
    'unit',
  ]);
  expect(takeoff.at(-1)).toEqual({
    item: 'rod-stock',
    kind: '3/8',
    lengthMm: 3048,
    run: null,
    level: null,
    quantity: 12,
    unit: 'each',
  });
});

test('the length of a run is its developed length, the elbow along its centre line', () => {
  // 60 ft of straight, an elbow of two legs of 1 ft, 35 ft of straight: 97 ft.
  expect(print(scenarioT1()).runs[0]?.lengthMm).toBeCloseTo(97 * 304.8, 9);
});

test('a run that cannot be laid out has empty lists and says that it is incomplete, and so do the hours', () => {
  const labourBook = scenarioT2().labourBook!;
  const printed = print({ ...scenarioT1AsDrawn(), labourBook });
  expect(printed.runs[0]?.layout).toEqual({
    ok: false,
    incomplete: true,
    sections: [],
    joints: [],
    supports: [],
    facing: [],
  });
  expect(printed.labour).toMatchObject({ incomplete: true, hours: { likely: 0 } });
  expect(printed.takeoff).toEqual([]);
});

test('hours are printed to six decimals and the cost of an hour unrounded', () => {
  expect(bid.labour?.hours.likely).toBe(2423.973548);
  expect(bid.labour?.costPerProductiveHour).toBe(33200 / 3.25);
});

test('the same document prints the same bytes, and every number in them is a number', () => {
  for (const document of [scenarioT2(), demoJob()]) {
    const text = JSON.stringify(print(document));
    expect(JSON.stringify(print(structuredClone(document)))).toBe(text);
    expect(text).not.toMatch(/NaN|Infinity|undefined/);
  }
});

test('what is not a number is never printed as nothing: it is a fault', () => {
  const broken = figures(toModel(scenarioT2()));
  const labour = { ...broken.labour!, range: { ...broken.labour!.range, sd: Number.NaN } };
  expect(() => printFigures({ ...broken, labour })).toThrow('NaN');
});
