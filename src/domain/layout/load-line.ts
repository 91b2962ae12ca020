import type { BuswayType, Run } from '../model.ts';
import { type Length, METRE } from '../units/length.ts';
import type { TapPlace } from './joint-bars.ts';
import type { PlacedPiece } from './result.ts';

/** What hangs along a stretch of busway: uniform loads end to end and points, each in order. */
export interface LoadLine {
  readonly from: Length;
  readonly to: Length;
  readonly spans: readonly { readonly from: Length; readonly to: Length; readonly kgPerUnit: number }[];
  readonly points: readonly { readonly at: Length; readonly kg: number }[];
}

export interface LoadedRun {
  readonly run: Run;
  readonly type: BuswayType;
  readonly pieces: readonly PlacedPiece[];
  readonly length: Length;
  readonly centreFeedAt: Length | null;
  readonly taps: readonly TapPlace[];
}

/**
 * The loads of a run with all planned taps on: straight pieces by the metre, a fitting's weight spread evenly over its body,
 * the feed's and each tap's weight as points. A weight that nobody has stated counts 0 (the run's findings say so).
 */
export function loadLine(loaded: LoadedRun): LoadLine {
  const { pieces, type, length } = loaded;
  const spans = pieces.map((piece) => ({
    from: piece.from,
    to: piece.to,
    kgPerUnit: pieceWeight(piece, type) / (piece.to - piece.from),
  }));
  return { from: 0, to: length, spans: merged(spans), points: pointLoads(loaded) };
}

/** The part of a load line that lies on a stretch; points at its ends belong to it. */
export function clipped(line: LoadLine, from: Length, to: Length): LoadLine {
  return {
    from,
    to,
    spans: line.spans
      .filter((span) => span.to > from && span.from < to)
      .map((span) => ({ ...span, from: Math.max(from, span.from), to: Math.min(to, span.to) })),
    points: line.points.filter((point) => point.at >= from && point.at <= to),
  };
}

function pieceWeight(piece: PlacedPiece, type: BuswayType): number {
  switch (piece.kind) {
    case 'stock':
    case 'cut':
      return (type.weightKgPerM * (piece.to - piece.from)) / METRE;
    case 'elbow':
      return type.elbow?.weightKg ?? 0;
    case 'tee':
      return type.tee?.weightKg ?? 0;
  }
}

/** Neighbours of one density as one span: fewer to sweep. */
function merged(spans: LoadLine['spans']): LoadLine['spans'] {
  const out: { from: Length; to: Length; kgPerUnit: number }[] = [];
  for (const span of spans) {
    const before = out.at(-1);
    if (before !== undefined && before.to === span.from && Math.abs(before.kgPerUnit - span.kgPerUnit) < 1e-15) {
      before.to = span.to;
    } else {
      out.push({ ...span });
    }
  }
  return out;
}

function pointLoads({ run, type, taps, length, centreFeedAt }: LoadedRun): LoadLine['points'] {
  const onRun = taps.filter(({ at }) => at >= 0 && at <= length);
  const points = onRun.map(({ tap, at }) => ({ at, kg: tap.weightKg ?? 0 }));
  if (run.feed.kind !== 'tee') points.push({ at: centreFeedAt ?? 0, kg: type.feed.weightKg ?? 0 });
  return points.filter((point) => point.kg > 0).sort((a, b) => a.at - b.at);
}
