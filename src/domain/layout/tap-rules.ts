import type { BuswayType, Run } from '../model.ts';
import type { Length } from '../units/length.ts';
import type { TapPlace } from './joint-bars.ts';
import type { PlacedPiece } from './result.ts';
import type { Say } from './say.ts';

/** The laid-out run that taps are checked against. */
export interface TapSetting {
  readonly run: Run;
  readonly type: BuswayType;
  readonly length: Length;
  readonly pieces: readonly PlacedPiece[];
  readonly joints: readonly { readonly at: Length }[];
}

/** An open interval that no tap's centre may stand in, and what to say of one that does. */
export interface TapBar {
  readonly rule: 'tap.joint-clear' | 'tap.end-clear' | 'tap.on-fitting' | 'tap.in-crossing' | 'tap.spacing';
  readonly from: number;
  readonly to: number;
  readonly say: (at: Length) => string;
}

/** What bars a tap's centre wherever the other taps are: joints, ends, fittings and the walls themselves. */
export function standingBars(setting: TapSetting, say: Say): readonly TapBar[] {
  return [...jointClearances(setting, say), ...endClearances(setting, say), ...bodies(setting), ...walls(setting, say)];
}

/** What another tap bars: its least spacing, and the room that two boxes need. */
export function neighbourBars(type: BuswayType, other: TapPlace, say: Say): readonly TapBar[] {
  const { minSpacing, boxLength } = type.tap;
  const bars: TapBar[] = [];
  const bar = (needed: Length, words: (away: Length) => string) =>
    bars.push({
      rule: 'tap.spacing',
      from: other.at - needed,
      to: other.at + needed,
      say: (at) => words(Math.abs(at - other.at)),
    });
  if (boxLength !== null) {
    bar(
      boxLength,
      (away) => `its box overlaps that of tap ${other.tap.id} at ${say(other.at)} by ${say(boxLength - away)}`,
    );
  }
  if (minSpacing !== null) {
    bar(
      minSpacing,
      (away) =>
        `it is ${say(away)} from tap ${other.tap.id} at ${say(other.at)}, centre to centre, and needs ${say(minSpacing)}`,
    );
  }
  return bars;
}

function jointClearances({ type, joints }: TapSetting, say: Say): TapBar[] {
  const clear = type.tap.jointClear;
  if (clear === null) return [];
  return joints.map((joint, index) => ({
    rule: 'tap.joint-clear',
    from: joint.at - clear,
    to: joint.at + clear,
    say: (at) =>
      `it is ${say(Math.abs(at - joint.at))} from joint ${index + 1} at ${say(joint.at)} and needs ${say(clear)}`,
  }));
}

/** A branch begins at its tee, which is no end: there only the joint's clearance counts. */
function endClearances({ run, type, length }: TapSetting, say: Say): TapBar[] {
  const clear = type.tap.endClear ?? 0;
  const words = (where: string, at: Length) =>
    at < 0 ? `it is ${say(-at)} beyond ${where}` : `it is ${say(at)} from ${where} and needs ${say(clear)}`;
  const end: TapBar = {
    rule: 'tap.end-clear',
    from: length - clear,
    to: Number.POSITIVE_INFINITY,
    say: (at) => words(`the end of the run at ${say(length)}`, length - at),
  };
  const start: TapBar = {
    rule: 'tap.end-clear',
    from: Number.NEGATIVE_INFINITY,
    to: run.feed.kind === 'tee' ? 0 : clear,
    say: (at) => words('the start of the run', at),
  };
  return [start, end];
}

function bodies({ pieces }: TapSetting): TapBar[] {
  return pieces
    .filter((piece) => piece.kind === 'elbow' || piece.kind === 'tee')
    .map(({ from, to, kind }) => ({ rule: 'tap.on-fitting', from, to, say: () => `it stands on the ${kind}` }));
}

function walls({ run }: TapSetting, say: Say): TapBar[] {
  return run.crossings.map((crossing) => ({
    rule: 'tap.in-crossing',
    from: crossing.at - crossing.thickness / 2,
    to: crossing.at + crossing.thickness / 2,
    say: () => `it stands inside the ${crossing.kind} at ${say(crossing.at)}`,
  }));
}
