import { judgeFaceOff } from '../../../src/domain/face-off/judge-face-off.ts';
import type { Finding } from '../../../src/domain/finding.ts';
import { layoutJob } from '../../../src/domain/layout/layout-job.ts';
import type { BuswayType, Job, Run, Side } from '../../../src/domain/model.ts';
import { aJob, aRun, aTap, feet } from '../../support/job.ts';
import { layoutType } from '../layout/l-run.ts';

/** Boxes 1 ft long that stand out 1'-4" from the centre line, with 3 ft to be kept free before them. All invented. */
export function boxedType(front: Partial<BuswayType['tapFront']> = {}, changes: Partial<BuswayType> = {}): BuswayType {
  return layoutType({ tapFront: { boxDepth: feet(4 / 3), boxHeight: null, clearRoom: feet(3), ...front }, ...changes });
}

interface Place {
  readonly x?: number;
  readonly y?: number;
  readonly z?: number;
  readonly headingDeg?: number;
  readonly length?: number;
  readonly taps?: readonly number[];
}

/** A straight run, lengths in feet: taps `T1`, `T2`, … at these distances. 20 ft are one section, with a joint at the feed alone. */
export function row(id: string, conductorSide: Side, place: Place, changes: Partial<Run> = {}): Run {
  const { x = 0, y = 0, z = 10, headingDeg = 0, length = 20, taps = [] } = place;
  return aRun({
    id,
    conductorSide,
    start: { x: feet(x), y: feet(y), z: feet(z) },
    headingDeg,
    legs: [{ length: feet(length), turn: 'none', tapsMustFace: null }],
    taps: taps.map((at, index) => aTap({ id: `T${index + 1}`, place: { at: feet(at) } })),
    ...changes,
  });
}

export function judged(runs: readonly Run[], types: readonly BuswayType[] = [boxedType()], job: Partial<Job> = {}) {
  const whole = aJob({ types, runs, ...job });
  return judgeFaceOff(whole, layoutJob(whole));
}

/** "A 10 warning": whose tap, where in feet, how bad. */
export function inShort(findings: readonly Finding[]): string[] {
  return findings.map(({ run, at, severity }) => `${run} ${(at ?? 0) / feet(1)} ${severity}`);
}

/** Everything that a person would notice if it changed, without the words. */
export function outline(findings: readonly Finding[]) {
  return findings.map(({ rule, severity, run, at }) => ({ rule, severity, run, at }));
}
