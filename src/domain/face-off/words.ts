import { placeAdvice } from '../layout/check-taps.ts';
import type { LegalPlaces } from '../layout/legal-tap-places.ts';
import type { Say } from '../layout/say.ts';
import type { Length } from '../units/length.ts';
import type { Clash } from './clash.ts';
import type { Obstacle, StandingRun } from './standing.ts';

/** A tap with the worst of what it clashes with, and how many more there are. */
export interface ClashingTap {
  readonly tap: { readonly id: string; readonly at: Length };
  /** Height of its run there. */
  readonly z: number;
  readonly worst: Clash;
  readonly more: number;
}

/** One finding's words: who stands in whose way, the room there is and the room needed, and what to do. */
export function clashWords(run: StandingRun, clashing: ClashingTap, legal: LegalPlaces, say: Say): string {
  const { tap, worst, more } = clashing;
  const others = more === 0 ? '' : ` There is too little room from ${more} more besides.`;
  return (
    `Tap ${tap.id} at ${say(tap.at)}: ${troubleWords(run, worst, say)}.${others}${heightWords(clashing, say)} ` +
    `${placeAdvice(tap.at, legal, say)}${apartWords(run, worst, say)}`
  );
}

function troubleWords(run: StandingRun, clash: Clash, say: Say): string {
  switch (clash.kind) {
    case 'overlap':
      return overlapWords(run, clash, say);
    case 'height':
      return `in plan ${overlapWords(run, clash, say)}`;
    case 'room':
      return roomWords(run, clash, say);
  }
}

function overlapWords(run: StandingRun, { other, isSquare, overlap }: Clash, say: Say): string {
  const name = obstacleName(run, other, say);
  if (other.tap === null) {
    return isSquare
      ? `its box reaches ${say(overlap)} past the centre line of ${name}`
      : `its box reaches into the housing of ${name}`;
  }
  return isSquare
    ? `its box and that of ${name}, which it faces, reach ${say(overlap)} into each other`
    : `its box and that of ${name} take the same space`;
}

function roomWords(run: StandingRun, { other, isSquare, isOthersRoom, there, needed }: Clash, say: Say): string {
  const name = obstacleName(run, other, say);
  const numbers = `${say(there)} of room and ${say(needed)} is needed, ${say(needed - there)} too little`;
  if (other.tap === null) return `between its box and the centre line of ${name} there is ${numbers}`;
  if (isSquare) return `between its box and that of ${name}, which it faces, there is ${numbers}`;
  if (isOthersRoom) return `before the box of ${name} it leaves ${numbers}`;
  return `between its box and that of ${name} there is ${numbers}`;
}

function obstacleName(run: StandingRun, other: Obstacle, say: Say): string {
  const isOwn = other.run === run;
  if (other.tap !== null) {
    const of = isOwn ? 'of this run' : `of run ${other.run.run.id}`;
    return `tap ${other.tap.id} ${of} at ${say(other.tap.at)}`;
  }
  return isOwn ? `this run from ${say(other.stretch.from)} on` : `run ${other.run.run.id}`;
}

function heightWords({ z, worst }: ClashingTap, say: Say): string {
  if (worst.isHeightKnown) return '';
  return (
    ` They hang at ${say(z)} and ${say(worst.other.solid.z)}, and the height of a box is not stated: ` +
    'whether they meet is unknown, not a pass. Enter it.'
  );
}

/** Two runs that face each other can also be parted; one run's legs are drawn anew. */
function apartWords(run: StandingRun, { other, isSquare, apart }: Clash, say: Say): string {
  return isSquare && other.run !== run ? ` Or hang the two runs ${say(apart)} farther apart.` : '';
}
