import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { continuousLoads } from '../../../src/domain/layout/continuous-beam.ts';
import type { LoadLine } from '../../../src/domain/layout/load-line.ts';
import { simpleSpanLoads } from '../../../src/domain/layout/simple-spans.ts';
import { METRE } from '../../../src/domain/units/length.ts';
import { reactionsByStiffness } from './beam-by-stiffness.ts';

const metres = (value: number) => Math.round(value * METRE);

/** Equal spans of 1 m under 1 kg/m, so that reactions read as shares of wL. */
function equalSpans(count: number, spacing = 1, kgPerM = 1): { line: LoadLine; supports: number[] } {
  const to = metres(count * spacing);
  const line = { from: 0, to, spans: [{ from: 0, to, kgPerUnit: kgPerM / METRE }], points: [] };
  return { line, supports: Array.from({ length: count + 1 }, (_, i) => metres(i * spacing)) };
}

const rounded = (loads: readonly number[], digits: number) => loads.map((load) => Number(load.toFixed(digits)));

describe('what a support carries as a continuous beam', () => {
  // check-values beam-2span: Hicks, Civil Engineering Formulas, table 2.1 (a secondary copy): 3/8, 5/4, 3/8 of wL.
  it('is 3/8, 5/4, 3/8 of wL over two equal spans', () => {
    const { line, supports } = equalSpans(2);
    expect(rounded(continuousLoads(line, supports), 12)).toEqual([0.375, 1.25, 0.375]);
  });

  // check-values beam-3span (the same table) and beam-3span-defl (a beam formulas page): 0.4, 1.1, 1.1, 0.4 of wL.
  it('is 0.4, 1.1, 1.1, 0.4 of wL over three equal spans', () => {
    const { line, supports } = equalSpans(3);
    expect(rounded(continuousLoads(line, supports), 12)).toEqual([0.4, 1.1, 1.1, 0.4]);
  });

  // check-values beam-simple-tributary: coefficients of the beam table times 20 kg/m x 1.5 m x 9.80665 m/s², newtons to 0.01.
  it('is 117.68 and 323.62 N at hangers of 20 kg/m at 1.5 m', () => {
    const { line, supports } = equalSpans(3, 1.5, 20);
    const newtons = continuousLoads(line, supports).map((kg) => kg * 9.80665);
    expect(rounded(newtons, 2)).toEqual([117.68, 323.62, 323.62, 117.68]);
  });

  it('is what a stiffness method gives for uneven spans, overhangs, uneven loads and points', () => {
    fc.assert(
      fc.property(beams, ({ line, supports }) => {
        const kgPerM = line.spans.map((span) => ({
          from: m(span.from),
          to: m(span.to),
          kgPerM: span.kgPerUnit * METRE,
        }));
        const points = line.points.map((point) => ({ at: m(point.at), kg: point.kg }));
        const beam = { from: m(line.from), to: m(line.to), supports: supports.map(m), uniform: kgPerM, points };
        const expected = reactionsByStiffness(beam);
        for (const [index, load] of continuousLoads(line, supports).entries())
          expect(load).toBeCloseTo(expected[index]!, 5);
      }),
      { numRuns: 300 },
    );
  });

  it('carries the same total either way', () => {
    fc.assert(
      fc.property(beams, ({ line, supports }) => {
        const total = (loads: readonly number[]) => loads.reduce((sum, load) => sum + load, 0);
        expect(total(continuousLoads(line, supports))).toBeCloseTo(total(simpleSpanLoads(line, supports)), 6);
      }),
    );
  });
});

describe('what a support carries by simple spans', () => {
  it('is wL inside and half of it at the ends', () => {
    const { line, supports } = equalSpans(3, 2, 5);
    expect(rounded(simpleSpanLoads(line, supports), 9)).toEqual([5, 10, 10, 5]);
  });

  // job map 0.4: 8.5 lb/ft over a 10 ft gap is 85 lb; 20 lb taps at 3.5 ft add 57 lb on average. Here one tap by the lever rule.
  it('takes a tap by the lever rule', () => {
    const line = { from: 0, to: metres(10), spans: [], points: [{ at: metres(3.5), kg: 20 }] };
    expect(rounded(simpleSpanLoads(line, [0, metres(10)]), 9)).toEqual([13, 7]);
  });

  it('takes an overhang wholly on the end support, and a load over a support on that support alone', () => {
    const points = [
      { at: 0, kg: 9 },
      { at: metres(2), kg: 4 },
      { at: metres(5), kg: 1 },
    ];
    const line = { from: 0, to: metres(5), spans: [], points };
    expect(simpleSpanLoads(line, [metres(1), metres(2), metres(4)])).toEqual([9, 4, 1]);
  });
});

const m = (length: number) => length / METRE;

const beams = fc
  .record({
    start: fc.integer({ min: 0, max: 8 }),
    gaps: fc.array(fc.integer({ min: 4, max: 30 }), { minLength: 0, maxLength: 6 }),
    end: fc.integer({ min: 0, max: 8 }),
    cuts: fc.array(fc.integer({ min: 1, max: 60 }), { maxLength: 3 }),
    densities: fc.array(fc.integer({ min: 0, max: 25 }), { minLength: 4, maxLength: 4 }),
    points: fc.array(fc.record({ at: fc.integer({ min: 0, max: 100 }), kg: fc.integer({ min: 1, max: 30 }) }), {
      maxLength: 5,
    }),
  })
  .map(({ start, gaps, end, cuts, densities, points }) => {
    const tenth = METRE / 10;
    const supports = [0, ...gaps].map((_, i) => start + gaps.slice(0, i).reduce((sum, gap) => sum + gap, 0));
    const to = supports.at(-1)! + end + 1;
    const bounds = [0, ...new Set(cuts.filter((cut) => cut < to)), to].sort((a, b) => a - b);
    const spans = bounds
      .slice(1)
      .map((bound, i) => ({ from: bounds[i]! * tenth, to: bound * tenth, kgPerUnit: densities[i]! / METRE }));
    const on = points.filter((point) => point.at <= to).sort((a, b) => a.at - b.at);
    const line: LoadLine = { from: 0, to: to * tenth, spans, points: on.map(({ at, kg }) => ({ at: at * tenth, kg })) };
    return { line, supports: supports.map((place) => place * tenth) };
  });
