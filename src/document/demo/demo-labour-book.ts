import type { LabourBookDocument } from '../schema/labour-book.ts';
import { feet } from './feet.ts';

type Activity = LabourBookDocument['activities'][string];

/** The demo's labour book: starter hours, invented; low and high are invented around them. Each company keeps its own. */
export function demoLabourBook(): LabourBookDocument {
  return {
    version: 'demo-1 (invented)',
    policy: 'add',
    activities: {
      'handle-section': install('each', 0.25),
      'handle-tap': install('each', 0.05),
      'lay-out': install('100 ft', 2),
      support: install('each', 0.5),
      section: { ...install('each', 1), bands: [band(5, 0.4), band(10, 0.6), band(20, 1)] },
      joint: install('each', 0.6),
      elbow: install('each', 0.9),
      tee: install('each', 1.2),
      'end-feed': install('each', 1.5),
      termination: install('each', 0.4),
      'end-cap': install('each', 0.15),
      'slot-closure': install('100 ft', 1.5),
      tap: install('each', 0.4),
      drop: install('each', 0.35),
      label: install('each', 0.08),
      'fire-seal': install('each', 1.5),
      'test-insulation': test('each', 1.5),
      'test-ground': test('each', 0.4),
      'test-joint': test('each', 0.3),
      'torque-log': test('each', 0.5),
      'test-tap': test('each', 0.2),
      'thermal-scan': test('each', 1),
      'test-papers': test('each', 1),
      punch: test('each', 0.5),
    },
    factors: {
      height: [
        { overMm: feet(12), percent: 10 },
        { overMm: feet(15), percent: 20 },
        { overMm: feet(20), percent: 30 },
      ],
      congestion: { open: 0, normal: 15, tight: 35 },
      storeyPercentEach: 1,
      livePercent: 30,
    },
    learning: { rate: 0.95, referenceRepeat: 8, over: 'run' },
    nonProductivePercent: 6,
    crew: [
      { role: 'Foreman, half the time on tools', number: 1, ratePerHour: 9_800, effectiveness: 0.5 },
      { role: 'Journeyman', number: 2, ratePerHour: 8_800, effectiveness: 1 },
      { role: 'Apprentice', number: 1, ratePerHour: 5_800, effectiveness: 0.75 },
    ],
    correlation: 0.5,
    trials: 10_000,
    seed: 1,
  };
}

/** Work on the busway: every condition of the place bears on it. */
function install(unit: string, likely: number): Activity {
  return { unit, ...around(likely), factors: ['height', 'congestion', 'storey', 'live'] };
}

/** Tests and papers: neither height nor congestion makes a form longer. */
function test(unit: string, likely: number): Activity {
  return { unit, ...around(likely), factors: [] };
}

function band(upToFeet: number, likely: number): NonNullable<Activity['bands']>[number] {
  return { upToMm: feet(upToFeet), ...around(likely) };
}

function around(likely: number): { low: number; likely: number; high: number } {
  return { low: thousandths(likely * 0.85), likely, high: thousandths(likely * 1.4) };
}

function thousandths(value: number): number {
  return Number(value.toFixed(3));
}
