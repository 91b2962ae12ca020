import { type Length, METRE } from '../units/length.ts';
import { clipped, type LoadLine } from './load-line.ts';

/**
 * What each support carries when the busway is one straight continuous beam of constant stiffness over them, overhangs in, kg;
 * below 0 the support would have to hold it down. Supports in ascending order.
 *
 * Three-moment equation (Clapeyron): M₀L₁ + 2M₁(L₁+L₂) + M₂L₂ = −6(A₁a₁/L₁ + A₂b₂/L₂), the end moments being those of the
 * overhangs. Two equal spans of uniform w give 0.375, 1.25, 0.375 wL.
 */
export function continuousLoads(line: LoadLine, supports: readonly Length[]): readonly number[] {
  if (supports.length === 0) return [];
  const spans = supports.slice(1).map((to, index) => spanLoad(line, supports[index] ?? 0, to));
  const [start, end] = [supports[0]!, supports.at(-1)!];
  const first = overhang(clipped(line, line.from, start), start, 'with');
  const last = overhang(clipped(line, end, line.to), end, 'without');
  const moments = supportMoments(spans, -first.moment, -last.moment);
  return supports.map((_, index) => {
    const before = spans[index - 1];
    const after = spans[index];
    const here = moments[index]!;
    const fromLeft = before === undefined ? first.kg : before.onRight + (moments[index - 1]! - here) / before.length;
    const fromRight = after === undefined ? last.kg : after.onLeft + (moments[index + 1]! - here) / after.length;
    return fromLeft + fromRight;
  });
}

/** A span by itself, in metres and kg: its simple reactions and its load terms 6Aa/L about the left and 6Ab/L about the right. */
interface SpanLoad {
  readonly length: number;
  readonly onLeft: number;
  readonly onRight: number;
  readonly aboutLeft: number;
  readonly aboutRight: number;
}

// Points at a support bear on that support alone: a span's points are those after its left end, up to and with its right.
function spanLoad(line: LoadLine, from: Length, to: Length): SpanLoad {
  const part = clipped(line, from, to);
  const length = (to - from) / METRE;
  const sum = { onLeft: 0, onRight: 0, aboutLeft: 0, aboutRight: 0 };
  for (const { at, kg } of part.points) {
    if (at === from) continue;
    const a = (at - from) / METRE;
    const b = length - a;
    sum.onRight += (kg * a) / length;
    sum.onLeft += (kg * b) / length;
    sum.aboutLeft += (kg * a * (length * length - a * a)) / length;
    sum.aboutRight += (kg * b * (length * length - b * b)) / length;
  }
  for (const piece of part.spans) {
    const [c, d] = [(piece.from - from) / METRE, (piece.to - from) / METRE];
    const density = piece.kgPerUnit * METRE;
    const load = density * (d - c);
    sum.onRight += (load * (c + d)) / 2 / length;
    sum.onLeft += (load * (length - (c + d) / 2)) / length;
    sum.aboutLeft += density * uniformTerm(length, c, d);
    sum.aboutRight += density * uniformTerm(length, length - d, length - c);
  }
  return { length, ...sum };
}

/** ∫ x(L² − x²)/L dx from c to d: the point-load term, spread. */
function uniformTerm(length: number, c: number, d: number): number {
  const primitive = (x: number) => (length * x * x) / 2 - x ** 4 / (4 * length);
  return primitive(d) - primitive(c);
}

/**
 * Weight of an overhang and its moment about the support that carries it. Points on that support count once: with the first
 * overhang, and with the last span.
 */
function overhang(part: LoadLine, support: Length, atSupport: 'with' | 'without'): { kg: number; moment: number } {
  const sum = { kg: 0, moment: 0 };
  const add = (load: number, at: number) => {
    sum.kg += load;
    sum.moment += (load * Math.abs(at - support)) / METRE;
  };
  for (const piece of part.spans) add((piece.to - piece.from) * piece.kgPerUnit, (piece.from + piece.to) / 2);
  for (const point of part.points) if (point.at !== support || atSupport === 'with') add(point.kg, point.at);
  return sum;
}

/** Moments over the supports, hogging below 0: the tridiagonal system by elimination (Thomas). */
function supportMoments(spans: readonly SpanLoad[], first: number, last: number): number[] {
  const count = spans.length + 1;
  const moments = new Array<number>(count).fill(0);
  moments[0] = first;
  moments[count - 1] = count === 1 ? first : last;
  const factor: number[] = [0];
  const constant: number[] = [first];
  for (let i = 1; i < count - 1; i++) {
    const [left, right] = [spans[i - 1]!, spans[i]!];
    const pivot = 2 * (left.length + right.length) - left.length * factor[i - 1]!;
    const known = -(left.aboutLeft + right.aboutRight) - left.length * constant[i - 1]!;
    factor[i] = right.length / pivot;
    constant[i] = known / pivot;
  }
  for (let i = count - 2; i > 0; i--) moments[i] = constant[i]! - factor[i]! * moments[i + 1]!;
  return moments;
}
