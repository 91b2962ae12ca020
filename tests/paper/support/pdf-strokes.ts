import { pdfStreams } from './pdf-text.ts';

export type Segment = readonly [x1: number, y1: number, x2: number, y2: number];

/**
 * The straight lines that a PDF strokes, page by page, in points (1/72 in) of the page: its drawing operators followed by hand
 * (PDF 1.7, 8.4 and 8.5: q Q cm m l S), without the program that wrote them.
 */
export function pdfStrokes(pdf: Buffer): Segment[][] {
  return pdfStreams(pdf)
    .filter((stream) => /^1 0 0 -1 0 [\d.]+ cm/.test(stream))
    .map(strokesOf);
}

type Matrix = readonly [number, number, number, number, number, number];

function strokesOf(stream: string): Segment[] {
  const found: Segment[] = [];
  const saved: Matrix[] = [];
  let now: Matrix = [1, 0, 0, 1, 0, 0];
  let path: Segment[] = [];
  let at: readonly [number, number] = [0, 0];
  for (const line of stream.split('\n')) {
    const words = line.trim().split(/\s+/);
    const operator = words.pop();
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = words.map(Number);
    if (operator === 'q') saved.push(now);
    else if (operator === 'Q') now = saved.pop() ?? now;
    else if (operator === 'cm') now = times([a, b, c, d, e, f], now);
    else if (operator === 'm') at = placed(now, a, b);
    else if (operator === 'l') {
      const to = placed(now, a, b);
      path.push([...at, ...to]);
      at = to;
    } else if (operator === 'S') {
      found.push(...path);
      path = [];
    } else if (operator === 'f' || operator === 'n') path = [];
  }
  return found;
}

function times([a, b, c, d, e, f]: Matrix, [g, h, i, j, k, l]: Matrix): Matrix {
  return [a * g + b * i, a * h + b * j, c * g + d * i, c * h + d * j, e * g + f * i + k, e * h + f * j + l];
}

function placed([a, b, c, d, e, f]: Matrix, x: number, y: number): readonly [number, number] {
  return [a * x + c * y + e, b * x + d * y + f];
}

/** Lengths of the level lines, longest first. */
export function levelLengths(strokes: readonly Segment[]): number[] {
  return strokes
    .filter(([, y1, , y2]) => Math.abs(y1 - y2) < 0.01)
    .map(([x1, , x2]) => Math.abs(x2 - x1))
    .sort((a, b) => b - a);
}

/** Lines of lettering that a drawing sets letter by letter, each from BT to ET. */
export function pdfLettering(pdf: Buffer): string[] {
  return pdfStreams(pdf).flatMap((stream) =>
    [...stream.matchAll(/BT\n([\s\S]*?)\nET/g)].map(([, set = '']) =>
      [...set.matchAll(/<([0-9a-f]+)> Tj/gi)]
        .map((match) => Buffer.from(match[1] ?? '', 'hex').toString('latin1'))
        .join(''),
    ),
  );
}
