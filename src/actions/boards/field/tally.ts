import { isHung } from '../../../domain/quality/states.ts';
import type { RunState } from '../../run-states.ts';

/** Done of planned, by what people count on a floor. */
export interface Tally {
  readonly supports: Count;
  readonly pieces: Count;
  readonly joints: Count;
  readonly taps: Count;
}

export interface Count {
  readonly done: number;
  readonly of: number;
}

/** Hangers set, pieces hung, joints accepted, tap-offs checked. */
export function tallyOf({ things }: Pick<RunState, 'things'>): Tally {
  const count = (states: Readonly<Partial<Record<string, number>>>, done: (state: string) => boolean): Count => {
    const entries = Object.entries(states).filter(([state]) => state !== 'removed');
    const sum = (kept: typeof entries) => kept.reduce((total, [, some]) => total + (some ?? 0), 0);
    return { done: sum(entries.filter(([state]) => done(state))), of: sum(entries) };
  };
  return {
    supports: count(things.supports, (state) => state !== 'planned'),
    pieces: count(things.pieces, isHung),
    joints: count(things.joints, (state) => state === 'accepted'),
    taps: count(things.taps, (state) => state === 'checked' || state === 'in-service'),
  };
}

export function sumOf(tallies: readonly Tally[]): Tally {
  const sum = (of: keyof Tally): Count => ({
    done: tallies.reduce((total, tally) => total + tally[of].done, 0),
    of: tallies.reduce((total, tally) => total + tally[of].of, 0),
  });
  return { supports: sum('supports'), pieces: sum('pieces'), joints: sum('joints'), taps: sum('taps') };
}
