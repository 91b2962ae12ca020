import fc from 'fast-check';
import { expect, it } from 'vitest';
import { demoJob } from '../../../src/document/demo/demo-job.ts';
import type { JobDocument, RunDocument } from '../../../src/document/job-document.ts';
import { mirroredRun, turnedOver } from '../../../src/document/several/mirrored-run.ts';
import { shiftedRun } from '../../../src/document/several/shifted-run.ts';
import { toModel } from '../../../src/document/to-model.ts';
import { layoutJob } from '../../../src/domain/layout/layout-job.ts';
import type { RunLayout } from '../../../src/domain/layout/result.ts';

// A grid of 1/8 mm keeps sums of doubles exact, so that "the same" may mean the very same figures.
const place = fc.integer({ min: -80_000, max: 80_000 }).map((eighths) => eighths / 8);
const side = fc.constantFrom<'left' | 'right'>('left', 'right');
const FEET_MM = 304.8;

/** Runs of one to four legs on stock lengths, with taps by distance and by plan position. */
const anyRun = fc
  .record({
    xMm: place,
    yMm: place,
    headingDeg: fc.constantFrom(0, 90, 180, 270, -90, 33, 45.5),
    conductorSide: side,
    turns: fc.array(fc.constantFrom<'left' | 'right' | 'up' | 'down'>('left', 'right', 'up', 'down'), { maxLength: 3 }),
    lengths: fc.array(fc.integer({ min: 3, max: 9 }), { minLength: 4, maxLength: 4 }),
    near: fc.option(fc.record({ xMm: place, yMm: place }), { nil: undefined }),
    tapsMustFace: fc.option(side, { nil: undefined }),
  })
  .map(({ xMm, yMm, headingDeg, conductorSide, turns, lengths, near, tapsMustFace }): RunDocument => {
    const template = demoJob().runs[0]!;
    const { pairedRun: _pair, end: _end, crossings: _walls, noSupport: _zones, ...rest } = template;
    return {
      ...rest,
      start: { xMm, yMm, zMm: 9_000 },
      headingDeg,
      conductorSide,
      legs: [...turns, 'none' as const].map((turn, index) => ({
        // an elbow takes a foot at either end of a straight part
        lengthMm: (lengths[index]! * 5 + (index > 0 ? 1 : 0) + (turn === 'none' ? 0 : 1)) * FEET_MM,
        turn,
        ...(index === 0 && tapsMustFace !== undefined ? { tapsMustFace } : {}),
      })),
      taps: [{ ...template.taps![0]! }, ...(near === undefined ? [] : [{ ...withoutPlace(template.taps![1]!), near }])],
    };
  });

function withoutPlace(tap: NonNullable<RunDocument['taps']>[number]) {
  const { atMm: _at, ...rest } = tap;
  return rest;
}

function laidOut(...runs: readonly RunDocument[]): readonly RunLayout[] {
  const job: JobDocument = { ...demoJob(), runs: [...runs] };
  return layoutJob(toModel(job));
}

const level = (deg: number) => ((deg % 360) + 360) % 360;
const lines = fc.record({ xMm: place, yMm: place, deg: fc.constantFrom(0, 90, 180, 270, -90) });

it('mirrored twice over a line along x or y, a run is the very same run', () => {
  fc.assert(
    fc.property(anyRun, lines, (run, line) => {
      const back = mirroredRun(mirroredRun(run, line), line);
      expect(level(back.headingDeg!)).toBeCloseTo(level(run.headingDeg!), 9);
      expect({ ...back, headingDeg: 0 }).toEqual({ ...run, headingDeg: 0 });
    }),
  );
});

it('mirrored twice over a slanting line, every point is back within the finest length', () => {
  fc.assert(
    fc.property(anyRun, place, place, fc.integer({ min: -3600, max: 3600 }), (run, xMm, yMm, tenths) => {
      const line = { xMm, yMm, deg: tenths / 10 };
      const back = mirroredRun(mirroredRun(run, line), line);
      expect(Math.abs(back.start!.xMm - run.start!.xMm)).toBeLessThanOrEqual(0.0125);
      expect(Math.abs(back.start!.yMm - run.start!.yMm)).toBeLessThanOrEqual(0.0125);
      expect(back.legs).toEqual(run.legs);
      expect(back.conductorSide).toBe(run.conductorSide);
    }),
  );
});

it('a mirrored run has the same pieces, joints and hangers in the same places, and its course is the mirror image', () => {
  let compared = 0;
  fc.assert(
    fc.property(anyRun, lines, (run, line) => {
      const [own, image] = laidOut(run, { ...mirroredRun(run, line), id: 'IMAGE' });
      expect(image!.ok).toBe(own!.ok);
      expect(image!.pieces).toEqual(own!.pieces); // an elbow that turns towards the conductors still does
      expect(image!.joints).toEqual(own!.joints);
      expect(image!.supports.map(({ at }) => at)).toEqual(own!.supports.map(({ at }) => at));
      expect(image!.taps.map(({ at }) => at)).toEqual(own!.taps.map(({ at }) => at));
      const alongX = level(line.deg) % 180 === 0;
      const [axis, twice] = alongX ? (['y', 160 * line.yMm] as const) : (['x', 160 * line.xMm] as const);
      own!.path.forEach((point, index) => {
        const mirrored = image!.path[index]!;
        expect(Math.abs(mirrored[axis] + point[axis] - twice)).toBeLessThanOrEqual(1); // 1/80 mm, each rounded once
        expect(Math.abs(mirrored[alongX ? 'x' : 'y'] - point[alongX ? 'x' : 'y'])).toBeLessThanOrEqual(1);
        expect(mirrored.z).toBe(point.z);
      });
      own!.facing.forEach(({ compassDeg, relative }, index) => {
        expect(image!.facing[index]!.relative).not.toBe(relative);
        const reflected = level(2 * line.deg - compassDeg);
        expect(Math.abs(((level(image!.facing[index]!.compassDeg) - reflected + 540) % 360) - 180)).toBeLessThan(1e-6);
      });
      if (own!.ok) compared += 1;
    }),
  );
  expect(compared).toBeGreaterThan(20);
});

it('a run and its branch mirrored over a line have tees of the other hand', () => {
  const [parent, branch] = demoJob().runs.filter((run) => run.id.startsWith('F1-R06-A'));
  const line = { xMm: 0, yMm: 50_000, deg: 0 };
  const image = [
    { ...mirroredRun(parent!, line), id: 'P' },
    { ...mirroredRun(branch!, line), id: 'Q', feed: { ...mirroredRun(branch!, line).feed, fromRun: 'P' } },
  ];
  const tee = (runs: readonly RunDocument[]) => laidOut(...runs)[0]!.pieces.find(({ kind }) => kind === 'tee')!;
  const own = tee([parent!, branch!]);
  expect(own.hand).toMatch(/^(near|far)-(left|right)$/);
  const swapped = own.hand!.endsWith('left') ? own.hand!.replace('left', 'right') : own.hand!.replace('right', 'left');
  expect(tee(image)).toEqual({ ...own, hand: swapped });
});

it('the same course turned over has the same pieces with elbows of the other hand, and its taps face the other way', () => {
  let elbows = 0;
  const other = {
    inside: 'outside',
    outside: 'inside',
    'slot-inside': 'slot-inside',
    'slot-outside': 'slot-outside',
  } as const;
  fc.assert(
    fc.property(anyRun, (run) => {
      expect(turnedOver(turnedOver(run))).toEqual(run);
      const [own, over] = laidOut(run, { ...turnedOver(run), id: 'OVER' });
      const expected = own!.pieces.map((piece) =>
        piece.kind === 'elbow' && piece.hand !== null
          ? { ...piece, hand: other[piece.hand as keyof typeof other] }
          : piece,
      );
      expect(over!.pieces).toEqual(expected);
      elbows += expected.filter(({ hand }) => hand === 'inside' || hand === 'outside').length;
      expect(over!.path).toEqual(own!.path);
      own!.facing.forEach(({ compassDeg }, index) => {
        expect(level(over!.facing[index]!.compassDeg - compassDeg)).toBeCloseTo(180, 6);
      });
    }),
  );
  expect(elbows).toBeGreaterThan(20);
});

it('a copy at a pitch has every point of its course and every plan position of a tap-off moved by the pitch, and all else as it was', () => {
  fc.assert(
    fc.property(anyRun, place, place, (run, xMm, yMm) => {
      const copy = shiftedRun(run, { xMm, yMm });
      const [own, moved] = laidOut(run, { ...copy, id: 'COPY' });
      own!.path.forEach((point, index) => {
        const there = moved!.path[index]!;
        expect(Math.abs(there.x - point.x - 80 * xMm)).toBeLessThanOrEqual(1); // two roundings to 1/80 mm
        expect(Math.abs(there.y - point.y - 80 * yMm)).toBeLessThanOrEqual(1);
        expect([there.z, there.at]).toEqual([point.z, point.at]);
      });
      run.taps!.forEach((tap, index) => {
        const near = tap.near && { xMm: tap.near.xMm + xMm, yMm: tap.near.yMm + yMm };
        expect(copy.taps![index]).toEqual(near === undefined ? tap : { ...tap, near });
      });
      expect(moved!.pieces).toEqual(own!.pieces);
      expect(moved!.supports).toEqual(own!.supports);
      expect(moved!.taps.map(({ at }) => at)).toEqual(own!.taps.map(({ at }) => at));
    }),
  );
});
