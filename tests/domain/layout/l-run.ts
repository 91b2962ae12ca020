import { contextFor } from '../../../src/domain/layout/context-for.ts';
import { layoutRun } from '../../../src/domain/layout/layout-run.ts';
import type { PlacedPiece, RunLayout } from '../../../src/domain/layout/result.ts';
import type { BuswayType, Job, Run } from '../../../src/domain/model.ts';
import { FOOT, INCH } from '../../../src/domain/units/length.ts';
import { aJob, aRun, aTap, aType, feet } from '../../support/job.ts';

/** The invented type of the layout scenarios: hanger step 1 in, all else as the shared demo type. */
export function layoutType(changes: Partial<BuswayType> = {}): BuswayType {
  const type = aType();
  return { ...type, support: { ...type.support, step: INCH }, ...changes };
}

/** The L-shaped run: 61 ft to a corner, then 34 ft wanted, 32.0 to 36.5 ft allowed; a fire wall and a duct on the first leg. */
export function lRun(changes: Partial<Run> = {}): Run {
  return aRun({
    legs: [
      { length: feet(61), turn: 'left', tapsMustFace: null },
      { length: feet(34), turn: 'none', tapsMustFace: null },
    ],
    end: { reach: feet(32), hardStop: feet(36.5) },
    crossings: [{ at: feet(39), thickness: feet(1), kind: 'fire-wall', fireRatingMin: 120 }],
    noSupport: [{ from: feet(43), to: feet(47), reason: 'duct' }],
    ...changes,
  });
}

/** The 70 ft run with 20 taps at a pitch of 3.5 ft from 1.75 ft. */
export function standardRun(changes: Partial<Run> = {}): Run {
  const taps = Array.from({ length: 20 }, (_, k) => aTap({ id: `T${k + 1}`, place: { at: feet(1.75 + 3.5 * k) } }));
  return aRun({ taps, ...changes });
}

export function straightRun(lengthFeet: number, changes: Partial<Run> = {}): Run {
  return aRun({ legs: [{ length: feet(lengthFeet), turn: 'none', tapsMustFace: null }], ...changes });
}

/** One run of a job of its own, laid out. */
export function laidOut(run: Run, type: BuswayType = layoutType(), job: Partial<Job> = {}): RunLayout {
  const whole = aJob({ types: [type], runs: [run], ...job });
  return layoutRun(run, contextFor(whole, run));
}

export const inFeet = (length: number): number => length / FOOT;
export const lengthsOf = (pieces: readonly PlacedPiece[]): number[] =>
  pieces.map((piece) => inFeet(piece.to - piece.from));
export const placesOf = (things: readonly { readonly at: number }[]): number[] =>
  things.map((thing) => inFeet(thing.at));
export const rulesOf = (layout: RunLayout): string[] => layout.findings.map((finding) => finding.rule);

/** The messages of one rule, in order. */
export function messages(layout: RunLayout, rule: string): string[] {
  return layout.findings.filter((finding) => finding.rule === rule).map((finding) => finding.message);
}
