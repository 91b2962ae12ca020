import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { barsOn, clashOf } from '../../../src/domain/face-off/clash.ts';
import { judgeFaceOff } from '../../../src/domain/face-off/judge-face-off.ts';
import { roomBefore } from '../../../src/domain/face-off/solid.ts';
import {
  boxAt,
  type Obstacle,
  obstaclesOf,
  type StandingRun,
  standingRuns,
} from '../../../src/domain/face-off/standing.ts';
import type { Job } from '../../../src/domain/model.ts';
import { aJob, aLayout, aRun, aTap } from '../../support/job.ts';
import { layoutType } from '../layout/l-run.ts';
import { type BruteRun, type BruteSizes, bruteClash, bruteRoom, HAIR, rectangle } from './brute-face-off.ts';
import { outline } from './hall.ts';

/** A hall of straight runs in bare units, as the program takes it. Nothing bars a place but the ends and what stands across. */
function hall(runs: readonly BruteRun[], sizes: BruteSizes) {
  const type = layoutType({
    tap: { jointClear: 0, endClear: 0, minSpacing: null, boxLength: sizes.boxLength },
    tapFront: { boxDepth: sizes.depth, boxHeight: null, clearRoom: sizes.clear },
  });
  const made = runs.map((run) =>
    aRun({
      id: run.id,
      conductorSide: run.side,
      start: { x: run.x, y: run.y, z: 0 },
      headingDeg: run.degrees,
      legs: [{ length: run.length, turn: 'none', tapsMustFace: null }],
      taps: run.taps.map(({ id, at }) => aTap({ id, place: { at } })),
    }),
  );
  const project = { ...aJob().project, units: 'metric' as const };
  const job: Job = aJob({ types: [type], runs: made, project });
  const layouts = made.map((run, i) => aLayout(run, [], { length: runs[i]!.length, joints: [] }));
  return { job, layouts };
}

const quarter = fc.constantFrom(0, 90, 180, 270);
const anyAngle = fc.integer({ min: 0, max: 3599 }).map((tenths) => tenths / 10);
const runOf = (degrees: fc.Arbitrary<number>) =>
  fc.record({
    x: fc.integer({ min: 0, max: 60 }),
    y: fc.integer({ min: 0, max: 60 }),
    degrees,
    side: fc.constantFrom('left' as const, 'right' as const),
    length: fc.integer({ min: 10, max: 50 }),
    places: fc.array(fc.integer({ min: 0, max: 50 }), { maxLength: 5 }),
  });
const runsOf = (degrees: fc.Arbitrary<number>) =>
  fc.array(runOf(degrees), { minLength: 2, maxLength: 6 }).map((found) =>
    found.map(
      ({ places, ...run }, index): BruteRun => ({
        ...run,
        id: `R${index}`,
        taps: [...new Set(places)].filter((at) => at <= run.length).map((at) => ({ id: `T${at}`, at })),
      }),
    ),
  );
const sizes = fc.record({
  boxLength: fc.integer({ min: 1, max: 6 }),
  depth: fc.integer({ min: 1, max: 7 }),
  clear: fc.integer({ min: 0, max: 12 }),
});

describe.each([
  ['square to each other', runsOf(quarter)],
  ['at any angle', runsOf(anyAngle)],
])('runs that lie %s', (_name, someRuns) => {
  it('have the findings that looking at every pair gives', () => {
    fc.assert(
      fc.property(someRuns, sizes, (runs, size) => {
        const { job, layouts } = hall(runs, size);
        const judged = judgeFaceOff(job, layouts);
        for (const run of runs) {
          for (const { at } of run.taps) {
            const expected = surely(run, at, runs, size);
            if (expected === 'on the brink') continue;
            const own = judged.filter((finding) => finding.run === run.id && finding.at === at);
            expect(own.map(({ severity }) => severity)).toEqual(expected === null ? [] : [expected]);
          }
        }
      }),
      { numRuns: 600 },
    );
  });

  it('are offered the nearest places that trying every place gives', () => {
    fc.assert(
      fc.property(someRuns, sizes, (runs, size) => {
        const { job, layouts } = hall(runs, size);
        for (const { run: id, at, message } of judgeFaceOff(job, layouts)) {
          const run = runs.find((one) => one.id === id)!;
          const clashes = Array.from({ length: run.length + 1 }, (_, place) => surely(run, place, runs, size));
          if (clashes.includes('on the brink')) continue;
          const free = (place: number) =>
            clashes[place] === null &&
            run.taps.every((tap) => tap.at === at || Math.abs(tap.at - place) >= size.boxLength);
          const down = Array.from({ length: at! + 1 }, (_, i) => at! - i).find(free);
          const up = Array.from({ length: run.length - at! + 1 }, (_, i) => at! + i).find(free);
          const count = [down, up].filter((place) => place !== undefined).length;
          const words = ['No place on this run', 'Nearest legal place:', 'Nearest legal places:'][count]!;
          expect(message).toContain(words);
          for (const [place, word] of [
            [down, 'back'],
            [up, 'on'],
          ] as const) {
            if (place !== undefined) expect(message).toMatch(new RegExp(`${metres(place - at!)} m ${word}\\)`));
          }
        }
      }),
      { numRuns: 250 },
    );
  });

  it('have the room before a box that clipping polygons measures', () => {
    fc.assert(
      fc.property(someRuns, sizes, (runs, size) => {
        const standing = standingOf(runs, size);
        const [one, other] = [runs[0]!, runs[1]!];
        for (const tap of one.taps) {
          for (const facing of other.taps) {
            const needed = size.clear;
            const [a, b] = [solidOf(standing[0]!, tap.at), solidOf(standing[1]!, facing.at)];
            const measured = bruteRoom(one, tap.at, rectangle(other, facing.at, 0, size), needed, size);
            const isOnTheBrink = Math.abs(measured - Math.round(measured)) < 5e-3 && measured !== Math.round(measured);
            if (!isOnTheBrink) expect(roomBefore(a, b, needed)).toBe(Math.floor(measured));
          }
        }
      }),
      { numRuns: 500 },
    );
  });

  it('clash both ways round: what one tap has too little room from has too little room from it', () => {
    fc.assert(
      fc.property(someRuns, sizes, sizes, (runs, size, otherSize) => {
        const [first] = standingOf(runs, size);
        const [, second] = standingOf(runs, otherSize);
        for (const a of boxesOf(first!)) {
          for (const b of boxesOf(second!)) {
            const [there, back] = [clashOf(a.solid, a.tap!.clear, b), clashOf(b.solid, b.tap!.clear, a)];
            expect(there?.kind).toEqual(back?.kind);
            if (there?.isSquare) expect(there.apart).toBe(back!.apart);
            // The same by where the box may stand: it is barred there if and only if it clashes there.
            const bars = barsOn(first!, a.stretch, b);
            expect(bars.some(({ from, to }) => from < a.tap!.at && a.tap!.at < to)).toBe(there !== null);
          }
        }
      }),
      { numRuns: 500 },
    );
  });
});

describe('a hall', () => {
  it('has the same findings wherever it lies and whichever way it is turned', () => {
    fc.assert(
      fc.property(runsOf(quarter), sizes, quarter, fc.integer({ min: -999, max: 999 }), (runs, size, turn, shift) => {
        const { job, layouts } = hall(runs, size);
        const moved = hall(
          runs.map((run) => turnedRun(run, turn, shift)),
          size,
        );
        expect(outline(judgeFaceOff(moved.job, moved.layouts))).toEqual(outline(judgeFaceOff(job, layouts)));
      }),
      { numRuns: 200 },
    );
  });

  it('has the mirrored findings in its mirror image', () => {
    fc.assert(
      fc.property(runsOf(anyAngle), sizes, (runs, size) => {
        const { job, layouts } = hall(runs, size);
        const mirrored = hall(
          runs.map((run) => ({
            ...run,
            y: -run.y,
            degrees: -run.degrees,
            side: run.side === 'left' ? 'right' : 'left',
          })),
          size,
        );
        expect(judgeFaceOff(mirrored.job, mirrored.layouts)).toEqual(judgeFaceOff(job, layouts));
      }),
      { numRuns: 200 },
    );
  });

  it('is judged run by run as it is judged whole', () => {
    fc.assert(
      fc.property(runsOf(quarter), sizes, (runs, size) => {
        const { job, layouts } = hall(runs, size);
        const alone = runs.flatMap(({ id }) => judgeFaceOff(job, layouts, new Set([id])));
        expect(alone).toEqual(judgeFaceOff(job, layouts));
      }),
      { numRuns: 100 },
    );
  });
});

/** Where two runs lie askew, a box may touch another by less than a rounding: such a place is not asked about. */
function surely(run: BruteRun, at: number, runs: readonly BruteRun[], size: BruteSizes) {
  const others = runs.filter((other) => other !== run);
  const clash = bruteClash(run, at, others, size, HAIR);
  return clash === bruteClash(run, at, others, size, 5e-3) ? clash : 'on the brink';
}

function metres(units: number): string {
  return `${(Math.abs(units) / 80_000).toFixed(3).replace('.', '\\.')}`;
}

function standingOf(runs: readonly BruteRun[], size: BruteSizes): readonly StandingRun[] {
  const { job, layouts } = hall(runs, size);
  return standingRuns(job, layouts);
}

function solidOf(run: StandingRun, at: number) {
  return boxAt(run, run.stretches[0]!, at)!;
}

function boxesOf(run: StandingRun): readonly Obstacle[] {
  return obstaclesOf(run).filter(({ tap }) => tap !== null);
}

/** Turned about the origin by quarters and shifted: whole coordinates stay whole. */
function turnedRun(run: BruteRun, turn: number, shift: number): BruteRun {
  const [cos, sin] = [Math.round(Math.cos((turn * Math.PI) / 180)), Math.round(Math.sin((turn * Math.PI) / 180))];
  return {
    ...run,
    x: run.x * cos - run.y * sin + shift,
    y: run.x * sin + run.y * cos - shift,
    degrees: run.degrees + turn,
  };
}
