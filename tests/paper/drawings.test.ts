import { render } from 'preact-render-to-string';
import { describe, expect, it } from 'vitest';
import type { RunLayout } from '../../src/domain/layout/result.ts';
import { FOOT, type Length, METRE } from '../../src/domain/units/length.ts';
import { drawingPdf } from '../../src/paper/drawings/drawing-pdf.ts';
import { drawingSvg } from '../../src/paper/drawings/drawing-svg.ts';
import type { PlanRun } from '../../views/drawings/floor-plan.tsx';
import type { SheetHead } from '../../views/drawings/sheet/head.ts';
import type { PaperName } from '../../views/drawings/sheet/papers.ts';
import { printPlan } from '../../views/drawings/sheet/plan-sheets.tsx';
import { type Printed, printStrip } from '../../views/drawings/sheet/strip-sheets.tsx';
import { standardRun } from '../views/support/runs.ts';
import { levelLengths, pdfLettering, pdfStrokes, type Segment } from './support/pdf-strokes.ts';

// What is measured here is measured in the files, in points or millimetres of paper. The arithmetic of the scales is that of
// their own words: at 1/8" = 1'-0" a foot is an eighth of an inch of paper, so 1:96; an inch is 72 points of a PDF (PDF 1.7,
// 8.3.2.3) and 25.4 mm; at 1:100 ten metres are 100 mm.

const head = (changes: Partial<SheetHead> = {}): SheetHead => ({
  jobNumber: 'T-1',
  jobName: 'Invented hall',
  title: 'Strip of run L2-R03-A',
  under: 'Level 2',
  standing: { kind: 'draft', after: null },
  date: '2026-05-12',
  units: 'ft-in',
  notes: [],
  ...changes,
});

const sheetsOf = (printed: Printed) => {
  if (!printed.ok) throw new Error(`${printed.why} ${printed.remedy}`);
  return printed;
};

async function bytesOf(stream: AsyncIterable<unknown>): Promise<Buffer> {
  const parts: Buffer[] = [];
  for await (const part of stream) parts.push(part as Buffer);
  return Buffer.concat(parts);
}

/** A straight run of such pieces in lengths of its unit, with a tap-off every so often. */
function straight(lengths: readonly number[], unit: Length, tapEvery: number) {
  const drawn = standardRun();
  let from = 0;
  const pieces = lengths.map((length) => {
    const piece = { from, to: from + length * unit, kind: 'stock' as const, hand: null };
    from = piece.to;
    return piece;
  });
  const total = from;
  const every = (step: number) =>
    Array.from({ length: Math.floor(total / unit / step) }, (_, k) => (k + 0.5) * step * unit);
  const layout: RunLayout = {
    ...drawn.layout,
    length: total,
    pieces,
    joints: pieces.map((piece) => ({ at: piece.from })),
    supports: every(10).map((at) => ({ at, loadKg: 50, continuousLoadKg: 55 })),
    taps: every(tapEvery).map((at, k) => ({ id: `T${k + 1}`, at, nearestLegal: null })),
  };
  return {
    run: {
      ...drawn.run,
      crossings: [{ at: total / 2, thickness: unit, kind: 'fire-wall' as const, fireRatingMin: 120 }],
    },
    layout,
  };
}

const thirty = straight([20, 10], FOOT, 5);

async function stripPdf(drawn: ReturnType<typeof straight>, paper: PaperName, ratio: number | null, said = head()) {
  const printed = sheetsOf(printStrip({ strip: { ...drawn, units: said.units }, head: said, paper, ratio }));
  const file = { head: said, paper, sheets: printed.sheets };
  return { ...printed, file, pdf: await bytesOf(drawingPdf(file)) };
}

describe('a strip on paper', () => {
  it.each([
    [96, 30 / 8],
    [64, (30 * 3) / 16],
    [48, 30 / 4],
  ] as const)('thirty feet at 1:%i are %d inches of a letter sheet', async (ratio, inches) => {
    const { pdf } = await stripPdf(thirty, 'letter', ratio);
    const [page] = pdfStrokes(pdf);
    const dimension = levelLengths(page!).filter((length) => Math.abs(length - inches * 72) < 0.1);
    expect(dimension.length).toBeGreaterThanOrEqual(2); // the dimension line and the underside of the structure
    expect(pdf.toString('latin1')).toContain('/MediaBox [0 0 792 612]');
  });

  it('ten metres at 1:100 are 100 mm of an A4 sheet, in the SVG as in the PDF', async () => {
    const metric = straight([3, 3, 3, 1], METRE, 1);
    const { pdf, file } = await stripPdf(metric, 'a4', 100, head({ units: 'metric' }));
    const points = levelLengths(pdfStrokes(pdf)[0]!);
    expect(points.some((length) => Math.abs((length / 72) * 25.4 - 100) < 0.05)).toBe(true);
    const svg = drawingSvg(file);
    const [, width, , mm] = /viewBox="0 0 ([\d.]+) ([\d.]+)" width="([\d.]+)mm"/.exec(svg)!;
    const lines = [...svg.matchAll(/d="M([\d.]+) ([\d.]+)H([\d.]+)"/g)].map(
      ([, from, , to]) => ((Number(to) - Number(from)) * Number(mm)) / Number(width),
    );
    expect(lines.some((length) => Math.abs(length - 100) < 0.05)).toBe(true);
  });

  it('every joint stands at its own distance on the dimension line', async () => {
    const { pdf } = await stripPdf(straight([20, 10, 5, 20], FOOT, 5), 'letter', 96);
    const upright = pdfStrokes(pdf)[0]!.filter(([x1, y1, x2, y2]) => Math.abs(x1 - x2) < 0.01 && Math.abs(y1 - y2) > 5);
    const xs = [...new Set(upright.map(([x]) => Math.round(x * 100) / 100))];
    const eighth = (feet: number) => (feet / 8) * 72;
    const first = xs.find((x) =>
      [20, 30, 35, 55].every((at) => xs.some((other) => Math.abs(other - x - eighth(at)) < 0.06)),
    );
    expect(first).toBeDefined();
  });

  it.each([
    ['ft-in', 'letter', 4 * 72],
    ['metric', 'a4', (100 / 25.4) * 72],
  ] as const)('the check bar of a sheet in %s is as long as it says', async (units, paper, points) => {
    const unit = units === 'metric' ? METRE : FOOT;
    const { pdf } = await stripPdf(
      straight(units === 'metric' ? [3, 3] : [10, 10], unit, 2),
      paper,
      null,
      head({ units }),
    );
    expect(levelLengths(pdfStrokes(pdf)[0]!).some((length) => Math.abs(length - points) < 0.05)).toBe(true);
    expect(pdfLettering(pdf).join('\n')).toContain('long when printed at 100 %');
  });

  it('two hundred crowded feet break over lines and sheets instead of shrinking, and no mark is lost', async () => {
    const dense = straight(
      Array.from({ length: 10 }, () => 20),
      FOOT,
      2,
    );
    const { pdf, ratio, sheets } = await stripPdf(dense, 'letter', null);
    expect(ratio).toBeLessThanOrEqual(96);
    expect(sheets.length).toBeGreaterThan(1);
    const said = pdfLettering(pdf);
    for (const { id } of dense.layout.taps) expect(said, id).toContain(id);
    for (let k = 1; k <= 20; k++)
      expect(said.some((line) => line.startsWith(`H${String(k).padStart(2, '0')} `))).toBe(true);
    for (let k = 1; k <= 10; k++) expect(said).toContain(`P${String(k).padStart(2, '0')} 20'-0"`);
    expect(said).toContain(`${sheets.length} of ${sheets.length}`);
    const sizes = new Set([...pdf.toString('latin1').matchAll(/\/F\d+ ([\d.]+) Tf/g)].map((match) => Number(match[1])));
    expect([...sizes].every((size) => size * 0.72 >= 4)).toBe(true);
  });

  it('marks at one place, which no scale parts, and words without end still print on few sheets', async () => {
    const drawn = straight([20, 20, 20], FOOT, 2);
    const at = 25 * FOOT;
    const taps = Array.from({ length: 9 }, (_, k) => ({ id: `SAME${k + 1}`, at, nearestLegal: null }));
    const run = { ...drawn.run, noSupport: [{ from: 0, to: 4 * FOOT, reason: 'duct '.repeat(60) }] };
    const { sheets, pdf } = await stripPdf({ run, layout: { ...drawn.layout, taps } }, 'letter', null);
    expect(sheets.length).toBeLessThanOrEqual(2);
    const said = pdfLettering(pdf);
    for (const { id } of taps) expect(said).toContain(id);
    expect(said.some((line) => line.startsWith('no hanger: duct duct'))).toBe(true);
  });

  it('a scale at which marks have no room is refused, with the one to choose', () => {
    const dense = straight(
      Array.from({ length: 10 }, () => 20),
      FOOT,
      2,
    );
    const printed = printStrip({ strip: { ...dense, units: 'ft-in' }, head: head(), paper: 'letter', ratio: 1200 });
    expect(printed).toEqual({
      ok: false,
      why: `At 1" = 100' the marks of run L2-R03-A have no room on the sheet.`,
      remedy: `Choose 1" = 60' or larger: the strip then breaks over more lines.`,
    });
  });

  it('says project, run, sheet, revision, scale and date, and that a draft is not to be built from', async () => {
    const draft = pdfLettering((await stripPdf(thirty, 'letter', 96)).pdf).join('\n');
    for (const said of [
      'T-1',
      'Invented hall',
      'Strip of run L2-R03-A',
      `1/8" = 1'-0"`,
      '1:96, feet and inches',
      '2026-05-12',
      '1 of 1',
    ])
      expect(draft).toContain(said);
    expect(draft).toContain('not for construction until released');
    const released = head({ standing: { kind: 'released', revision: 3 } });
    const built = pdfLettering((await stripPdf(thirty, 'letter', 96, released)).pdf).join('\n');
    expect(built).toContain('revision 3');
    expect(built).not.toContain('not for construction');
  });

  it('is black on white, and the same to the byte when it is made again', async () => {
    const { pdf, file } = await stripPdf(thirty, 'letter', null);
    expect(pdf.equals((await stripPdf(thirty, 'letter', null)).pdf)).toBe(true);
    const colours = [...drawingSvg(file).matchAll(/(?:fill|stroke)="([^"]+)"/g)].map((match) => match[1]);
    expect([...new Set(colours)].sort()).toEqual(['#000000', '#ffffff', 'none']);
  });
});

const runAt = (id: string, x: number, y: number, length: number, taps: readonly number[] = []): PlanRun => ({
  id,
  conductorSide: 'left',
  path: [
    { at: 0, x: x * FOOT, y: y * FOOT, z: 0 },
    { at: length * FOOT, x: (x + length) * FOOT, y: y * FOOT, z: 0 },
  ],
  pieces: [{ from: 0, to: length * FOOT, state: 'planned' }],
  taps: taps.map((at) => at * FOOT),
  tapMarks: taps.map((_, k) => `T${k + 1}`),
});

async function planPdf(runs: readonly PlanRun[], ratio: number | null) {
  const said = head({ title: 'Plan of Level 2', standing: { kind: 'level', released: 0, runs: runs.length } });
  const printed = sheetsOf(printPlan({ runs, units: 'ft-in', head: said, paper: 'letter', ratio }));
  const pdf = await bytesOf(drawingPdf({ head: said, paper: 'letter', sheets: printed.sheets }));
  return { ...printed, pages: pdfStrokes(pdf), text: pdfLettering(pdf).join('\n') };
}

/** Outlines of runs: the long level edges, two to a run. */
const edges = (page: readonly Segment[], y?: number) =>
  page.filter(
    ([x1, y1, x2, y2]) => Math.abs(y1 - y2) < 0.01 && Math.abs(x2 - x1) > 20 && (y === undefined || y1 === y),
  );

describe('a level plan on paper', () => {
  it('is true both ways: runs are as long and as far apart as the scale says', async () => {
    const { pages, ratio } = await planPdf([runAt('A', 0, 0, 64), runAt('B', 0, 32, 64)], 192);
    expect(ratio).toBe(192);
    const drawn = edges(pages[0]!).filter(([x1, , x2]) => Math.abs(Math.abs(x2 - x1) - 4 * 72) < 1.2); // 64 ft at 1/16"
    const ys = drawn.map(([, y]) => y);
    expect(drawn.length).toBeGreaterThanOrEqual(4);
    // from the upper edge of one run to the upper edge of the other: 32 ft are 2 in
    expect(ys.some((y) => ys.some((other) => Math.abs(other - y - 2 * 72) < 0.1))).toBe(true);
  });

  it('goes on over match lines that meet, and names the sheets beside', async () => {
    const { pages, sheets, text } = await planPdf([runAt('LONG', 0, 0, 400)], 96);
    expect(sheets.length).toBe(6);
    for (const sheet of [1, 2, 3, 4, 5, 6]) expect(text).toContain(`match line: see sheet ${sheet}`);
    let feet = 0;
    for (const page of pages) {
      const matches = page
        .filter(([x1, y1, x2, y2]) => Math.abs(x1 - x2) < 0.01 && Math.abs(y2 - y1) > 300)
        .map(([x]) => x);
      // The innermost upright at each side: the match line, or the border where the plan ends.
      const left = Math.max(...matches.filter((x) => x < 396));
      const right = Math.min(...matches.filter((x) => x > 396));
      // Inside the border and above the legend: the outline of the run alone.
      const [run] = edges(page)
        .filter(([, y]) => y > 200 && y < 560)
        .sort((a, b) => Math.abs(b[2] - b[0]) - Math.abs(a[2] - a[0]));
      const xs = [run![0], run![2]].sort((a, b) => a - b);
      const from = Math.max(xs[0]!, left);
      const to = Math.min(xs[1]!, right);
      feet += ((to - from) / 72) * 8;
    }
    expect(feet).toBeCloseTo(400, 0);
  });

  it('takes the largest scale that holds the level on one sheet', async () => {
    // Letter: 10.04 in inside the frame; 64 ft at 1/8" are 8 in and go in with the names, at 3/16" they are 12 in and do not.
    expect((await planPdf([runAt('A', 0, 0, 64)], null)).ratio).toBe(96);
    expect((await planPdf([runAt('A', 0, 0, 20)], null)).ratio).toBe(32);
  });

  it('refuses a scale that takes a roomful of paper', () => {
    const runs = [runAt('A', 0, 0, 4000), runAt('B', 0, 900, 4000)];
    const printed = printPlan({ runs, units: 'ft-in', head: head(), paper: 'letter', ratio: 12 });
    expect(printed).toMatchObject({
      ok: false,
      why: `At 1" = 1'-0" the plan of this level takes more than 60 sheets.`,
    });
  });

  it('letters the tap-offs of a level with 48 runs and 500 tap-offs where they do not run into one another', () => {
    const runs = Array.from({ length: 48 }, (_, k) =>
      runAt(
        `R${String(k + 1).padStart(2, '0')}`,
        (k % 2) * 90,
        Math.floor(k / 2) * 8,
        70,
        Array.from({ length: 11 }, (_, t) => 3 + 6 * t),
      ),
    );
    const { sheets } = sheetsOf(printPlan({ runs, units: 'ft-in', head: head(), paper: 'letter', ratio: 96 }));
    const boxes = sheets.map((sheet) =>
      [
        ...render(sheet).matchAll(
          /<text x="([\d.]+)" y="([\d.]+)" font-size="7.5" transform="rotate\(-90[^>]*>(T\d+)</g,
        ),
      ].map(([, x, y, text]) => ({ x: Number(x), y: Number(y), text: text! })),
    );
    const all = boxes.flat();
    expect(all.length).toBeGreaterThanOrEqual(48 * 11);
    for (const sheet of boxes) {
      for (const [i, a] of sheet.entries())
        for (const b of sheet.slice(i + 1))
          expect(Math.abs(a.x - b.x) < 7 && Math.abs(a.y - b.y) < 7, `${a.text} on ${b.text}`).toBe(false);
    }
  });
});
