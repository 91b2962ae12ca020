import type { Say } from '../../src/domain/layout/say.ts';
import { listed } from '../../src/domain/layout/say.ts';
import type { RevisionDifference } from '../../src/domain/revision/difference.ts';
import type { SubstituteWay } from '../../src/domain/substitution/substitute-way.ts';

export type Way = Pick<SubstituteWay, 'lengths' | 'moves' | 'hangers' | 'stops' | 'layout'> & {
  readonly difference: RevisionDifference;
};

/** A joint or hanger of the run as it stands. */
export interface Standing {
  readonly mark: string;
  readonly state: string;
  readonly at: number;
}

/** `10'-0" + 10'-0"`. */
export function sumWords(lengths: readonly number[], say: Say): string {
  return lengths.map(say).join(' + ');
}

/** What a way does, in a few words beside its choice. */
export function briefWords({ lengths, hangers, moves }: Way): string {
  const joints = lengths.length - 1;
  const changed = Math.max(hangers.removed.length, hangers.added.length);
  return [
    joints === 1 ? 'one joint more' : `${joints} joints more`,
    changed === 0 ? 'hangers stay' : `${changed} ${changed === 1 ? 'hanger' : 'hangers'} to change`,
    moves.length === 0 ? 'tap-offs stay' : `${moves.length} ${moves.length === 1 ? 'tap-off' : 'tap-offs'} to move`,
  ].join(', ');
}

interface Around {
  readonly from: number;
  readonly to: number;
  readonly joints: readonly Standing[];
  readonly supports: readonly Standing[];
}

/** What a way does, thing by thing. */
export function wayWords(way: Way, { from, to, joints, supports }: Around, say: Say): string[] {
  const inside = placesInside(from, way.lengths);
  const ends = joints.filter(({ at }) => at === from || at === to);
  const insulation = way.difference.reopened.insulationTests;
  return [
    `New ${inside.length === 1 ? 'joint' : 'joints'} at ${listed(inside.map(say))}.`,
    ...(ends.length === 0
      ? []
      : [
          `Made anew at ${ends.length === 1 ? 'its end' : 'its ends'}: ${listed(ends.map((joint) => jointSaid(joint, say)))}.`,
        ]),
    hangersSaid(way, supports, say),
    way.moves.length === 0
      ? 'Every tap-off fits where it is.'
      : `${listed(way.moves.map((move) => `${move.id} goes from ${say(move.from)} to ${say(move.to)}`))}: nearest legal place.`,
    ...(insulation.length === 0
      ? []
      : [
          `The insulation test of ${insulation.length === 1 ? 'this run' : `the ${insulation.length} runs joined to it`} is void once the work is done.`,
        ]),
  ];
}

function placesInside(from: number, lengths: readonly number[]): number[] {
  let at = from;
  return lengths.slice(0, -1).map((length) => {
    at += length;
    return at;
  });
}

function jointSaid({ mark, state, at }: Standing, say: Say): string {
  const had = state === 'open' ? '' : `, ${state} until now: its record stays with it`;
  return `${shortOf(mark)} at ${say(at)}${had}`;
}

function hangersSaid({ hangers }: Way, supports: readonly Standing[], say: Say): string {
  if (hangers.removed.length + hangers.added.length === 0) return 'Every hanger stays.';
  const go = hangers.removed.map((place) => {
    const standing = supports.find(({ at }) => at === place);
    const set = standing === undefined || standing.state === 'planned' ? 'planned' : `${standing.state}: take it down`;
    return `${shortOf(standing?.mark ?? 'hanger')} at ${say(place)} goes (${set})`;
  });
  const come =
    hangers.added.length === 0
      ? []
      : [`new ${hangers.added.length === 1 ? 'hanger' : 'hangers'} at ${listed(hangers.added.map(say))}`];
  return `${[...go, ...come].join('; ')}. The others stay.`.replace(/^n/, 'N');
}

/** "H05" of "F1-R01-A-H05". */
export function shortOf(mark: string): string {
  return mark.slice(mark.lastIndexOf('-') + 1);
}
