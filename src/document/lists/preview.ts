import type { JobDocument } from '../schema/document.ts';
import type { RunDocument } from '../schema/run.ts';
import type { TapDocument } from '../schema/tap.ts';

/** What a list of runs will make, shown before it does. */
export interface RunsPreview {
  readonly runs: number;
  readonly lengthMm: number;
  readonly levels: readonly { readonly level: string; readonly runs: number; readonly lengthMm: number }[];
  readonly first: readonly RunDocument[];
}

export interface RunTap {
  readonly run: string;
  readonly tap: TapDocument;
}

/** What a list of taps will make, shown before it does. */
export interface TapsPreview {
  readonly taps: number;
  readonly levels: readonly { readonly level: string; readonly taps: number }[];
  readonly runs: readonly { readonly run: string; readonly taps: number }[];
  readonly first: readonly RunTap[];
}

const SHOWN = 5;

export function previewRuns(runs: readonly RunDocument[]): RunsPreview {
  const levels = [...grouped(runs, (run) => run.level)].map(([level, here]) => ({
    level,
    runs: here.length,
    lengthMm: sumOfLegs(here),
  }));
  return { runs: runs.length, lengthMm: sumOfLegs(runs), levels, first: runs.slice(0, SHOWN) };
}

export function previewTaps(taps: readonly RunTap[], job: JobDocument): TapsPreview {
  const levelOf = new Map(job.runs.map((run) => [run.id, run.level]));
  const count = ([name, here]: readonly [string, readonly RunTap[]]) => ({ name, taps: here.length });
  return {
    taps: taps.length,
    levels: [...grouped(taps, ({ run }) => levelOf.get(run) ?? '')]
      .map(count)
      .map(({ name, taps: n }) => ({ level: name, taps: n })),
    runs: [...grouped(taps, ({ run }) => run)].map(count).map(({ name, taps: n }) => ({ run: name, taps: n })),
    first: taps.slice(0, SHOWN),
  };
}

/** Along the centre line, corner to corner, rounded to what a length can be: 0.0125 mm. */
function sumOfLegs(runs: readonly RunDocument[]): number {
  const total = runs.flatMap((run) => run.legs).reduce((sum, leg) => sum + leg.lengthMm, 0);
  return Math.round(total * 80) / 80;
}

function grouped<T>(things: readonly T[], keyOf: (thing: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const thing of things) {
    const key = keyOf(thing);
    const group = groups.get(key);
    if (group) group.push(thing);
    else groups.set(key, [thing]);
  }
  return groups;
}
