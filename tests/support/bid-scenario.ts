import { INSTALL_ACTIVITIES } from '../../src/domain/labour/install-activities.ts';
import type { RunLayout } from '../../src/domain/layout/result.ts';
import type { FactorName, Job, LabourActivity, LabourBook, Run } from '../../src/domain/model.ts';
import { aJob, aLabourBook, aLayout, aLevel, anActivity, aRun, aTap, feet, supportsAt } from './job.ts';

/** The invented bid scenario: four floors of twelve equal 70 ft runs, and the starter labour units it was reckoned with. */
export function bidScenario(book: Partial<LabourBook> = {}): { job: Job; layouts: readonly RunLayout[] } {
  const floors = [1, 2, 3, 4];
  const runs = floors.flatMap((floor) => Array.from({ length: 12 }, (_, i) => standardRun(floor, i + 1)));
  const job = aJob({
    levels: floors.map((floor) =>
      aLevel({ id: `L${floor}`, order: floor }, { congestion: 'normal', storeysAboveGrade: floor - 1 }),
    ),
    runs,
    labourBook: scenarioBook(book),
  });
  return { job, layouts: runs.map(standardLayout) };
}

function standardRun(floor: number, row: number): Run {
  const taps = Array.from({ length: 20 }, (_, i) => aTap({ id: `T${i + 1}`, place: { at: feet(1.75 + 3.5 * i) } }));
  const id = `L${floor}-R${String(row).padStart(2, '0')}`;
  return aRun({ id, level: `L${floor}`, taps, drop: feet(6.75), rod: '3/8' }, { terminations: 5 });
}

/** 20/20/20/10 with the feed joined by a contact set: four joints, eight supports. */
function standardLayout(run: Run): RunLayout {
  return aLayout(run, [20, 20, 20, 10], {
    joints: [0, 20, 40, 60].map((place) => ({ at: feet(place) })),
    supports: supportsAt(2, 11.5, 21, 30.5, 39, 48.5, 58, 68),
  });
}

/** Base hours of the scenario's starter table; low and high are invented around them. */
export function scenarioBook(changes: Partial<LabourBook> = {}): LabourBook {
  return aLabourBook({
    activities: [
      installed('handle-section', 0.25),
      installed('handle-tap', 0.05),
      installed('lay-out', 2, { unit: '100 ft' }),
      installed('support', 0.5),
      installed('section', 1, {
        bands: [
          { upToA: null, upTo: feet(5), low: 0.34, likely: 0.4, high: 0.56 },
          { upToA: null, upTo: feet(10), low: 0.51, likely: 0.6, high: 0.84 },
          { upToA: null, upTo: feet(20), low: 0.85, likely: 1, high: 1.4 },
        ],
      }),
      installed('joint', 0.6),
      installed('elbow', 0.9),
      installed('tee', 1.2),
      installed('end-feed', 1.5),
      installed('termination', 0.4),
      installed('end-cap', 0.15),
      installed('slot-closure', 1.5, { unit: '100 ft' }),
      installed('tap', 0.4),
      installed('drop', 0.35),
      installed('label', 0.08),
      installed('fire-seal', 1.5),
      anActivity('test-insulation', 1.5),
      anActivity('test-ground', 0.4),
      anActivity('test-joint', 0.3),
      anActivity('torque-log', 0.5),
      anActivity('test-tap', 0.2),
      anActivity('thermal-scan', 1),
      anActivity('test-papers', 1),
    ],
    factors: { height: [], congestion: { open: 0, normal: 15, tight: 35 }, storeyPercentEach: 1, livePercent: 0 },
    learning: { rate: 0.95, referenceRepeat: 8, over: 'run', activities: INSTALL_ACTIVITIES },
    nonProductivePercent: 6,
    crew: [
      { role: 'foreman', number: 1, ratePerHour: 9800, burdenPercent: 0, effectiveness: 0.5 },
      { role: 'journeyman', number: 2, ratePerHour: 8800, burdenPercent: 0, effectiveness: 1 },
      { role: 'apprentice', number: 1, ratePerHour: 5800, burdenPercent: 0, effectiveness: 0.75 },
    ],
    trials: 10_000,
    ...changes,
  });
}

function installed(id: string, likely: number, changes: Partial<LabourActivity> = {}): LabourActivity {
  const factors: readonly FactorName[] = ['congestion', 'storey'];
  return anActivity(id, likely, { factors, ...changes });
}
