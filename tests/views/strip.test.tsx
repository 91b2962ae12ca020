import fc from 'fast-check';
import PDFDocument from 'pdfkit';
import { render } from 'preact-render-to-string';
import drawSvg from 'svg-to-pdfkit';
import { describe, expect, it } from 'vitest';
import type { PlacedPiece } from '../../src/domain/layout/result.ts';
import { FOOT } from '../../src/domain/units/length.ts';
import { FloorPlan } from '../../views/drawings/floor-plan.tsx';
import { breakLines } from '../../views/drawings/strip/lines.ts';
import { BODY, LETTER } from '../../views/drawings/strip/metrics.ts';
import { planStrip, type StripPlan } from '../../views/drawings/strip/plan.ts';
import { Strip, type StripProps, stripSheets } from '../../views/drawings/strip.tsx';
import { cornerRun, crowdedRun, type DrawnRun, denseRun, floor, standardRun } from './support/runs.ts';

const props = (drawn: DrawnRun, more: Partial<StripProps> = {}): StripProps => ({
  ...drawn,
  units: 'ft-in',
  ink: 'screen',
  ...more,
});
const feet = (value: number) => Math.round(value * FOOT);
const drawnIn = (plan: StripPlan, mark: string) =>
  plan.lines.flatMap((line) => line.things).find(({ thing }) => thing.mark === mark)!;

/** Lettering as rectangles, on one line of the strip. */
function lettering(plan: StripPlan, line: number) {
  return plan.lines[line]!.labels.map(({ text, x, y, width }) => ({
    text,
    left: x - width / 2,
    right: x + width / 2,
    top: y - LETTER * 0.75,
    bottom: y,
  }));
}

function expectLegible(plan: StripPlan): void {
  for (const [index, line] of plan.lines.entries()) {
    const labels = lettering(plan, index);
    for (const [i, a] of labels.entries()) {
      expect(a.left, a.text).toBeGreaterThanOrEqual(0);
      expect(a.right, a.text).toBeLessThanOrEqual(plan.width);
      expect(a.bottom, a.text).toBeLessThan(line.height);
      for (const b of labels.slice(i + 1)) {
        const apart = a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;
        expect(apart, `${a.text} on ${b.text}`).toBe(true);
      }
    }
  }
}

describe('the strip of a run', () => {
  it('draws pieces to one scale: a 20 ft section is twice a 10 ft one, wherever it stands', () => {
    const plan = planStrip(props(standardRun()));
    expect(plan.lines.map((line) => [line.stretch.from, line.stretch.to])).toEqual([
      [0, feet(40)],
      [feet(40), feet(70)],
    ]);
    const seam = 1.6; // a hair of ground at both ends of a piece
    const twenty = drawnIn(plan, 'P01').box.width + seam;
    expect(twenty).toBeCloseTo(feet(20) * plan.scale, 6);
    expect(drawnIn(plan, 'P03').box.width + seam).toBeCloseTo(twenty, 6);
    expect(drawnIn(plan, 'P04').box.width + seam).toBeCloseTo(twenty / 2, 6);
  });

  it('puts hangers, joints and tap-offs at their distance from the feed', () => {
    const plan = planStrip(props(standardRun()));
    const centre = (mark: string) => drawnIn(plan, mark).box.x + drawnIn(plan, mark).box.width / 2;
    const zero = plan.lines[0]!.startX;
    expect(centre('H02') - zero).toBeCloseTo(feet(11.5) * plan.scale, 6);
    expect(centre('J02') - zero).toBeCloseTo(feet(20) * plan.scale, 6);
    expect(centre('T3') - zero).toBeCloseTo(feet(8.75) * plan.scale, 6);
    expect(centre('T20') - zero).toBeCloseTo(feet(68.25 - 40) * plan.scale, 6);
  });

  it('hangs hangers over the run, and tap-offs on the side they face', () => {
    const right = planStrip(props(standardRun()));
    const left = planStrip(props(cornerRun()));
    for (const plan of [right, left]) {
      const line = plan.lines[0]!;
      const hanger = drawnIn(plan, 'H01').box;
      expect(hanger.y).toBe(line.structureY);
      expect(hanger.y + hanger.height).toBeLessThan(line.bodyY);
    }
    expect(drawnIn(right, 'T1').box.y).toBeCloseTo(right.lines[0]!.bodyY + BODY, 6);
    expect(drawnIn(left, 'T1').box.y).toBeLessThan(left.lines[0]!.bodyY);
    expect(render(<Strip {...props(standardRun())} />)).toMatch(/taps face<\/text><text[^>]*>south</);
  });

  it('says where the facing turns with an elbow', () => {
    const plan = planStrip(props(cornerRun()));
    expect(plan.lines.map((line) => line.facing)).toEqual(['north', 'north', 'west']);
    expect(planStrip(props(crowdedRun())).lines[0]!.labels.map((label) => label.text)).toContain(
      'taps face south from here',
    );
  });

  it('shows every piece, joint, hanger and tap-off of a 200 ft run with 130 tap-offs, over several lines', () => {
    const plan = planStrip(props(denseRun()));
    const marks = new Set(plan.lines.flatMap((line) => line.things.map(({ thing }) => thing.mark)));
    expect(plan.lines.length).toBeGreaterThanOrEqual(5);
    expect(marks.size).toBe(10 + 10 + 41 + 130);
    expect(render(<Strip {...props(denseRun())} />)).not.toMatch(/font-size="(?!11")/);
    expectLegible(plan);
  });

  it('breaks at joints where one is near, and covers the run without a gap', () => {
    expect(breakLines(100, [40, 80], 50)).toEqual([
      { from: 0, to: 40 },
      { from: 40, to: 80 },
      { from: 80, to: 100 },
    ]);
    expect(breakLines(100, [], 40).map((line) => line.to)).toEqual([40, 80, 100]);
  });

  it.each([
    ['standard', standardRun()],
    ['corner', cornerRun()],
    ['crowded', crowdedRun()],
  ] as const)('no lettering of the %s run overlaps or leaves the sheet, on a screen, a phone or paper', (_, drawn) => {
    for (const width of [960, 600, 480]) expectLegible(planStrip(props(drawn, { width })));
  });

  it('no lettering overlaps whatever the run', () => {
    const anyRun = fc.record({
      lengths: fc.array(fc.double({ min: 1.5, max: 20, noNaN: true }), { minLength: 1, maxLength: 9 }),
      taps: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 40 }),
      hangers: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 20 }),
      left: fc.boolean(),
    });
    fc.assert(
      fc.property(anyRun, ({ lengths, taps, hangers, left }) => {
        expectLegible(planStrip(props(randomRun(lengths, taps, hangers, left))));
      }),
      { numRuns: 60 },
    );
  });

  it('keeps the ids of people as text, never as markup', () => {
    const drawn = standardRun();
    const nasty = '<script>alert(1)</script>';
    const layout = { ...drawn.layout, taps: [{ id: nasty, at: feet(3), nearestLegal: null }] };
    const run = { ...drawn.run, id: `${nasty}"`, feed: { ...drawn.run.feed, supply: nasty } };
    const svg = render(<Strip {...props({ ...drawn, layout, run, record: {} })} />);
    expect(svg).not.toContain('<script');
    expect(svg).toContain('&lt;script>alert(1)&lt;/script>');
  });

  it('has a title and a description, and is a picture or a group of links', () => {
    const linked = render(<Strip {...props(standardRun())} />);
    const plain = render(<Strip {...props(denseRun())} />);
    expect(linked).toContain('role="group" aria-labelledby="strip-L2-R03-A-title strip-L2-R03-A-desc"');
    expect(plain).toContain('role="img"');
    expect(/<desc [^>]*>([^<]*)<\/desc>/.exec(plain)?.[1]).toBe(
      "200'-0&quot; long: 10 pieces, 10 joints, 41 hangers, 130 tap-offs. The table beside the drawing lists the same things.",
    );
  });

  it('draws a run that could not be laid out as its centre line, crossings and zones', () => {
    const drawn = cornerRun();
    const layout = { ...drawn.layout, ok: false, pieces: [], joints: [], supports: [], taps: [] };
    const plan = planStrip(props({ ...drawn, layout, record: {} }));
    expect(plan.lines.flatMap((line) => line.things)).toEqual([]);
    expect(plan.lines.flatMap((line) => line.labels.map((label) => label.text))).toContain('fire wall, 60 min');
  });
});

describe('drawings on paper', () => {
  const drawings = [standardRun(), cornerRun(), crowdedRun(), denseRun()]
    .flatMap((drawn) => stripSheets(props(drawn, { ink: 'paper', width: 720 }), 540))
    .concat(<FloorPlan {...floor()} units="ft-in" ink="paper" width={720} tallest={480} />)
    .map((node) => render(node));

  it('are black on white by plain attributes, without styles, variables, patterns or foreign objects', () => {
    for (const svg of drawings) {
      expect(svg).not.toMatch(/currentColor|var\(|style=|<style|<pattern|<marker|foreignObject|url\(/);
      expect(svg.match(/(?:fill|stroke)="#[0-9a-f]{6}"/g)!.every((ink) => /#(000000|ffffff)/.test(ink))).toBe(true);
    }
  });

  it('are drawn by the PDF writer without a warning', () => {
    const warnings: string[] = [];
    const doc = new PDFDocument({ size: 'LETTER', layout: 'landscape' });
    doc.resume();
    for (const svg of drawings)
      drawSvg(doc, svg, 36, 36, { assumePt: true, warningCallback: (warning) => warnings.push(warning) });
    doc.end();
    expect(warnings).toEqual([]);
  });

  it('are cut between lines, each part no taller than asked, and no line is lost', () => {
    const parts = stripSheets(props(denseRun(), { ink: 'paper', width: 720 }), 540).map((node) => render(node));
    const heights = parts.map((svg) => Number(/height="([\d.]+)"/.exec(svg)![1]));
    expect(Math.max(...heights)).toBeLessThanOrEqual(540);
    const lines = planStrip(props(denseRun(), { width: 720 })).lines.length;
    expect(parts.join('').match(/line \d+ of \d+</g)).toHaveLength(lines);
  });
});

function randomRun(lengths: number[], taps: number[], hangers: number[], left: boolean): DrawnRun {
  const drawn = standardRun();
  const pieces: PlacedPiece[] = [];
  for (const length of lengths) {
    const from = pieces.at(-1)?.to ?? 0;
    pieces.push({ from, to: from + feet(length), kind: 'stock', hand: null });
  }
  const length = pieces.at(-1)!.to;
  return {
    run: { ...drawn.run, conductorSide: left ? 'left' : 'right' },
    record: {},
    layout: {
      ...drawn.layout,
      length,
      pieces,
      joints: pieces.map((piece) => ({ at: piece.from })),
      supports: hangers.map((part) => ({ at: Math.round(part * length), loadKg: 1, continuousLoadKg: 1 })),
      taps: taps.map((part, index) => ({ id: `T${index + 1}`, at: Math.round(part * length), nearestLegal: null })),
    },
  };
}
