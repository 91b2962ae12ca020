import type { Finding } from '../finding.ts';
import { matchSupports } from '../layout/match-pieces.ts';
import type { PlacedTap, RunLayout } from '../layout/result.ts';
import type { Run } from '../model.ts';
import type { Length } from '../units/length.ts';
import { type HeldRun, heldLayout } from './held-layout.ts';
import type { SubstitutionSite } from './site.ts';

/** A tap-off that no longer fits, and its nearest legal place. */
export interface TapMove {
  readonly id: string;
  readonly from: Length;
  readonly to: Length;
}

/** One way to make the section up, with the run as it would be. */
export interface SubstituteWay extends HeldRun {
  /** From the feed on. */
  readonly lengths: readonly Length[];
  readonly moves: readonly TapMove[];
  /** Hangers that go and hangers that come. */
  readonly hangers: { readonly removed: readonly Length[]; readonly added: readonly Length[] };
  /** What keeps it from being built; none: it may be chosen. */
  readonly stops: readonly Finding[];
}

const MOST_MOVES = 12;

/**
 * What comes of these sections in place of the damaged one: tap-offs that no longer fit go to their nearest legal place one
 * after the other, but for those that hang already, which stop it. `before` is the run as released under today's rules: what
 * stopped it before does not stop a repair. Null where the other sections could not stay.
 */
export function substituteWay(
  site: SubstitutionSite,
  lengths: readonly Length[],
  before: RunLayout,
): SubstituteWay | null {
  const moves: TapMove[] = [];
  let held = heldLayout(site, lengths);
  while (held !== null && moves.length < MOST_MOVES) {
    const unfit = firstUnfit(held.layout, before, site.hanging);
    if (unfit === null) break;
    moves.push({ id: unfit.id, from: unfit.at, to: unfit.nearestLegal ?? unfit.at });
    held = heldLayout({ ...site, run: withMovedTaps(site.run, moves) }, lengths);
  }
  if (held === null) return null;
  const match = matchSupports(site.layout.supports, held.layout.supports);
  return {
    ...held,
    lengths,
    moves,
    hangers: {
      removed: match.removed.map((index) => site.layout.supports[index]?.at ?? 0),
      added: match.added.map((index) => held.layout.supports[index]?.at ?? 0),
    },
    stops: newStops(held.layout, before),
  };
}

/** The tap-off nearest the feed that fitted and does not fit now, has a legal place, and does not hang yet. */
function firstUnfit(layout: RunLayout, before: RunLayout, hanging: ReadonlySet<string>): PlacedTap | null {
  const fitted = new Set(before.taps.filter(({ nearestLegal }) => nearestLegal === null).map(({ id }) => id));
  const unfit = layout.taps.filter(
    ({ id, at, nearestLegal }) =>
      fitted.has(id) && !hanging.has(id) && nearestLegal !== null && nearestLegal !== at && isStopped(layout, at),
  );
  return unfit.reduce<PlacedTap | null>((best, tap) => (best === null || tap.at < best.at ? tap : best), null);
}

function isStopped(layout: RunLayout, at: Length): boolean {
  return layout.findings.some((finding) => finding.severity === 'stop' && finding.at === at);
}

/** The run with these tap-offs at their new distances, whatever they were drawn by. */
export function withMovedTaps(run: Run, moves: readonly TapMove[]): Run {
  const to = new Map(moves.map((move) => [move.id, move.to]));
  return {
    ...run,
    taps: run.taps.map((tap) => {
      const at = to.get(tap.id);
      return at === undefined ? tap : { ...tap, place: { at } };
    }),
  };
}

function newStops(after: RunLayout, before: RunLayout): Finding[] {
  const nameOf = ({ rule, at }: Finding) => `${rule} ${at}`;
  const known = new Set(before.findings.filter(({ severity }) => severity === 'stop').map(nameOf));
  return after.findings.filter((finding) => finding.severity === 'stop' && !known.has(nameOf(finding)));
}
