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

/** What another tap bars: its least spacing and the room that two boxes need, whichever is more; null when neither is known. */
export function neighbourBar(type: BuswayType, other: TapPlace, say: Say): TapBar | null {
  const reach = neighbourReach(type);
  if (reach === 0) return null;
  const words = (at: Length) => neighbourWords(type, other, Math.abs(at - other.at), say);
  return { rule: 'tap.spacing', from: other.at - reach, to: other.at + reach, say: words };
}

/** How near two taps' centres may come. */
export function neighbourReach({ tap }: BuswayType): Length {
  return Math.max(tap.minSpacing ?? 0, tap.boxLength ?? 0);
}

function neighbourWords({ tap }: BuswayType, other: TapPlace, away: Length, say: Say): string {
  const { minSpacing, boxLength } = tap;
  const name = `tap ${other.tap.id} at ${say(other.at)}`;
  const tooClose = `it is ${say(away)} from ${name}, centre to centre, and needs ${say(minSpacing ?? 0)}`;
  if (boxLength === null || away >= boxLength) return tooClose;
  const overlap = say(boxLength - away);
  if (minSpacing === null || away >= minSpacing) return `its box overlaps that of ${name} by ${overlap}`;
  return `${tooClose}; their boxes overlap by ${overlap}`;
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
