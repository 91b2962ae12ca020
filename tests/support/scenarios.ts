import { demoLevel, demoProject } from '../../src/document/demo/demo-job.ts';
import { demoLabourBook } from '../../src/document/demo/demo-labour-book.ts';
import { demoHangers, MOUNTING_MM } from '../../src/document/demo/demo-run.ts';
import { demoType } from '../../src/document/demo/demo-type.ts';
import { feet } from '../../src/document/demo/feet.ts';
import type { BidDocument, JobDocument, RunDocument, TapDocument } from '../../src/document/job-document.ts';

/** The one 70 ft run as it is first drawn: 20 taps at a pitch of 3.5 ft from 1.75, two of which land on a joint. */
export function standardRun(): JobDocument {
  return {
    ...emptyScenario('S-1', 'The standard run, with taps as drawn (invented)'),
    runs: [drawnRun('F1-R01-A', 'F1')],
  };
}

/**
 * Scenario T1: round a corner, through a fire wall, after the feed was shifted by a foot. 61 ft to the corner, 34 ft
 * wanted after it, reach 32.0 and hard stop 36.5 from the corner.
 */
export function scenarioT1(conductorSide: 'left' | 'right' = 'left'): JobDocument {
  return { ...emptyScenario('T-1', 'Round a corner through a fire wall (invented)'), runs: [lRun(61, conductorSide)] };
}

/** Scenario T1 before the feed was shifted: 62 ft to the corner leave a straight part of 61, a foot past the stock. */
export function scenarioT1AsDrawn(): JobDocument {
  return { ...emptyScenario('T-1', 'Round a corner, a foot short of stock (invented)'), runs: [lRun(62, 'left')] };
}

/** Scenario T2: 48 standard runs on four floors, bid as a markup of 6 % or a margin of 6 %. */
export function scenarioT2(profit: 'markup' | 'margin' = 'markup'): JobDocument {
  const floors = [1, 2, 3, 4];
  return {
    ...emptyScenario('T-2', 'Four floors of twelve standard runs (invented)'),
    levels: floors.map(demoLevel),
    runs: floors.flatMap((floor) =>
      Array.from({ length: 12 }, (_, i) => drawnRun(`F${floor}-R${String(i + 1).padStart(2, '0')}`, `F${floor}`)),
    ),
    labourBook: scenarioLabourBook(),
    bid: scenarioBid(profit),
  };
}

function emptyScenario(number: string, name: string): JobDocument {
  return {
    format: 'busway-jobbook/1',
    project: { ...demoProject(), number, name },
    levels: [demoLevel(1)],
    buswayTypes: [demoType()],
    runs: [],
  };
}

function drawnRun(id: string, level: string): RunDocument {
  return {
    id,
    level,
    type: 'demo-250A-3PN',
    start: { xMm: 0, yMm: 0, zMm: MOUNTING_MM },
    headingDeg: 0,
    conductorSide: 'left',
    feed: { kind: 'end', deviceA: 250, faultKA: 18, xOverR: 4, terminations: 5 },
    legs: [{ lengthMm: feet(70), turn: 'none' }],
    ...demoHangers(),
    taps: Array.from({ length: 20 }, (_, k) => drawnTap(k)),
  };
}

function drawnTap(k: number): TapDocument {
  return {
    id: `T${k + 1}`,
    atMm: feet(1.75 + 3.5 * k),
    phases: k % 3 === 0 ? 'L1' : k % 3 === 1 ? 'L2' : 'L3',
    deviceA: 30,
    interruptingKA: 22,
    loadVA: 2_200,
    powerFactor: 0.97,
    dropMm: feet(4),
    weightKg: 9.071847,
  };
}

function lRun(cornerFeet: number, conductorSide: 'left' | 'right'): RunDocument {
  return {
    id: 'F1-R05-A',
    level: 'F1',
    type: 'demo-250A-3PN',
    start: { xMm: 0, yMm: 0, zMm: MOUNTING_MM },
    headingDeg: 0,
    conductorSide,
    feed: { kind: 'end', deviceA: 250, faultKA: 18, xOverR: 4, terminations: 5 },
    legs: [
      { lengthMm: feet(cornerFeet), turn: 'left' },
      { lengthMm: feet(34), turn: 'none' },
    ],
    end: { reachMm: feet(32), hardStopMm: feet(36.5) },
    crossings: [{ atMm: feet(39), thicknessMm: feet(1), kind: 'fire-wall', fireRatingMin: 120 }],
    noSupport: [{ fromMm: feet(43), toMm: feet(47), reason: 'Duct' }],
    ...demoHangers(),
  };
}

/** The demo's hours without a punch list and without a mounting height, as the scenario reckons them. */
function scenarioLabourBook(): JobDocument['labourBook'] {
  const book = demoLabourBook();
  const activities = Object.fromEntries(
    Object.entries(book.activities)
      .filter(([id]) => id !== 'punch')
      .map(([id, activity]) => [
        id,
        { ...activity, factors: (activity.factors ?? []).filter((name) => name !== 'height') },
      ]),
  );
  return { ...book, activities, factors: { ...book.factors, height: [] }, correlation: 0 };
}

function scenarioBid(kind: 'markup' | 'margin'): BidDocument {
  return {
    materials: 126_310_000,
    taxPercent: 7,
    other: 11_230_000,
    supervision: 7_232_000,
    overheadPercent: 10,
    profit: { kind, percent: 6 },
    contingencyP: 80,
  };
}
