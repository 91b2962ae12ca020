import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cordLength, cordLines, judgeCords } from '../../../src/domain/ordering/cord-lengths.ts';
import { FOOT, INCH } from '../../../src/domain/units/length.ts';
import { aJob, aLayout, aRun, aTap, feet } from '../../support/job.ts';
import { anOrdering } from '../../support/ordering.ts';

const STOCK = [feet(4), feet(6), feet(10)];

// Worked by hand from the rule "next stock length": exact, a sixteenth over, beyond the longest.
test.each([
  [feet(4), feet(4)],
  [feet(4) + INCH / 16, feet(6)],
  [feet(0.5), feet(4)],
  [feet(10), feet(10)],
  [feet(10) + 1, null],
])('a drop of %i takes a cord of %s', (drop, cord) => {
  expect(cordLength(drop, STOCK)).toBe(cord);
});

test('the cord is never shorter than its drop, and no shorter stock would do', () => {
  const length = fc.integer({ min: 1, max: 40 * FOOT });
  fc.assert(
    fc.property(length, fc.uniqueArray(length, { maxLength: 8 }), (drop, lengths) => {
      const stock = [...lengths].sort((a, b) => a - b);
      const cord = cordLength(drop, stock);
      const longEnough = stock.filter((one) => one >= drop);
      expect(cord).toBe(longEnough.length === 0 ? null : Math.min(...longEnough));
    }),
  );
});

const tap = (id: string, at: number, drop: number | null, deviceA = 30) =>
  aTap({ id, place: { at: feet(at) }, drop: drop === null ? null : feet(drop), deviceA });
const run = aRun({ taps: [tap('A', 1, 3), tap('B', 2, 3.5), tap('C', 3, 4.5), tap('D', 4, 4, 20), tap('E', 5, null)] });

test('cords are ordered by what they carry and by stock length: 3 and 3.5 ft are two of 4 ft', () => {
  const said = cordLines(run, aLayout(run, [10]), STOCK).map(({ kind, length, quantity, places }) => [
    kind,
    length,
    quantity,
    places,
  ]);
  expect(said).toEqual([
    ['L1-N 30 A', feet(4), 2, [feet(1), feet(2)]],
    ['L1-N 30 A', feet(6), 1, [feet(3)]],
    ['L1-N 20 A', feet(4), 1, [feet(4)]],
  ]);
});

test('without a list of stock lengths every cord keeps its own', () => {
  expect(cordLines(run, aLayout(run, [10]), []).map(({ length }) => length)).toEqual([
    feet(3),
    feet(3.5),
    feet(4.5),
    feet(4),
  ]);
});

test('a drop that no stock reaches is named with the length that is missing, and keeps its own length', () => {
  const long = aRun({ taps: [tap('T9', 5, 11.5)] });
  const base = aJob({ runs: [long] });
  const job = { ...base, project: { ...base.project, ordering: anOrdering({ cordStock: STOCK }) } };
  const layouts = [aLayout(long, [10])];
  expect(cordLines(long, layouts[0]!, STOCK)).toMatchObject([{ length: feet(11.5), quantity: 1 }]);
  const [finding, ...more] = judgeCords(job, layouts);
  expect(more).toEqual([]);
  expect(finding).toMatchObject({ rule: 'drop.too-long', severity: 'warning', run: long.id, at: feet(5) });
  expect(finding?.message).toContain(`T9 is 11'-6"; the longest cord in stock is 10'-0"`);
  expect(finding?.message).toContain(`bring the tap-off 1'-6" nearer`);
  expect(judgeCords(base, layouts)).toEqual([]);
});
