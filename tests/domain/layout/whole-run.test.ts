import { describe, expect, it } from 'vitest';
import { dice } from '../../../scripts/proof/dice.ts';
import { sectionInstance } from '../../../scripts/proof/section-instance.ts';
import { supportInstance } from '../../../scripts/proof/support-instance.ts';
import { parseJobDocument } from '../../../src/document/parse-job-document.ts';
import { toModel } from '../../../src/document/to-model.ts';
import { layoutJob } from '../../../src/domain/layout/layout-job.ts';
import type { PlacedPiece, RunLayout } from '../../../src/domain/layout/result.ts';
import type { BuswayType, Job, Run, Side, Turn } from '../../../src/domain/model.ts';

/** Runs with corners, tees, walls, zones, fixed taps, free ends and centre feeds; what holds of each is read from its own data. */
const SEED = 4_711;
const MANY = 400;

interface Laid {
  readonly job: Job;
  readonly run: Run;
  readonly type: BuswayType;
  readonly layout: RunLayout;
}

function laidRuns(draw: typeof sectionInstance): Laid[] {
  const laid: Laid[] = [];
  for (let i = 0; laid.length < MANY; i += 1) {
    const document = draw(dice(SEED, i));
    if (!parseJobDocument(document).ok) continue;
    const job = toModel(document);
    const layouts = layoutJob(job);
    for (const [k, run] of job.runs.entries()) {
      if (layouts[k]!.ok) laid.push({ job, run, type: job.types[0]!, layout: layouts[k]! });
    }
  }
  return laid;
}

const covered = laidRuns(sectionInstance);
const hung = laidRuns((chance) => supportInstance(chance, { places: chance.int(8, 60) })).filter(
  ({ layout }) => layout.supports.length > 0,
);

describe('whatever the run, its covering', () => {
  it('adds up to the unit: piece after piece without a gap, from the feed to an end that is allowed', () => {
    for (const { run, type, layout } of covered) {
      const { pieces, length } = layout;
      expect([0, ...pieces.map(({ to }) => to)]).toEqual([...pieces.map(({ from }) => from), length]);
      const drawn = run.legs.reduce((sum, leg) => sum + leg.length, run.feed.kind === 'tee' ? -type.tee!.leg : 0);
      const corner = drawn - run.legs.at(-1)!.length;
      expect(length).toBeGreaterThanOrEqual(run.end === null ? drawn : corner + run.end.reach);
      expect(length).toBeLessThanOrEqual(run.end === null ? drawn : corner + run.end.hardStop);
    }
  });

  it('is of stock lengths and at most one cut between fittings, of a length that can be ordered', () => {
    const withCut = covered.filter(({ run, type, layout }) => {
      let cuts = 0;
      for (const { kind, from, to } of layout.pieces) {
        if (kind === 'stock') expect(type.stockLengths).toContain(to - from);
        if (kind === 'cut') {
          const { min, max, step } = type.factoryCut!;
          expect([to - from >= min, to - from <= max, (to - from - min) % step]).toEqual([true, true, 0]);
        }
      }
      for (const part of partsOf(layout.pieces, run.feed.kind === 'centre' ? run.feed.at : null)) {
        const here = part.filter(({ kind }) => kind === 'cut').length;
        expect(here).toBeLessThanOrEqual(1);
        cuts += here;
      }
      return cuts > 0;
    });
    expect(withCut.length).toBeGreaterThan(20);
  });

  it('has no joint inside a wall’s clearance, a zone, or the clearance of a fixed tap', () => {
    let barred = 0;
    for (const { run, type, layout } of covered) {
      const wall = type.crossing.jointClear ?? 0;
      for (const { at } of layout.joints) {
        for (const crossing of run.crossings) {
          expect(Math.abs(at - crossing.at)).toBeGreaterThanOrEqual(crossing.thickness / 2 + wall);
        }
        for (const { from, to } of run.noJoint) expect(at > from && at < to).toBe(false);
        for (const tap of run.taps.filter(({ fixed }) => fixed)) {
          if ('at' in tap.place) expect(Math.abs(at - tap.place.at)).toBeGreaterThanOrEqual(type.tap.jointClear ?? 0);
        }
      }
      barred += run.crossings.length + run.noJoint.length;
    }
    expect(barred).toBeGreaterThan(50);
  });
});

describe('whatever the run, its hangers', () => {
  it('leave no gap over the spacing, no overhang over its limit, and stand clear of joints, zones and walls', () => {
    expect(hung.length).toBeGreaterThan(100);
    for (const { run, type, layout } of hung) {
      const places = layout.supports.map(({ at }) => at);
      const spacing = type.support.maxSpacing ?? NEC_368_30;
      places.slice(1).forEach((at, i) => {
        expect(at - places[i]!).toBeLessThanOrEqual(spacing);
        expect(at).toBeGreaterThan(places[i]!);
      });
      expect(places[0]).toBeLessThanOrEqual(type.support.maxEndOverhang!);
      expect(layout.length - places.at(-1)!).toBeLessThanOrEqual(type.support.maxEndOverhang!);
      for (const at of places) {
        for (const joint of layout.joints) {
          expect(Math.abs(at - joint.at)).toBeGreaterThanOrEqual(type.support.jointClear ?? 0);
        }
        for (const { from, to } of run.noSupport) expect(at > from && at < to).toBe(false);
        for (const crossing of run.crossings) {
          const clear = crossing.thickness / 2 + (type.crossing.supportClear ?? 0);
          expect(Math.abs(at - crossing.at)).toBeGreaterThanOrEqual(clear);
        }
      }
    }
  });
});

/** NEC 368.30: 5 ft where nothing else is stated; in units of 1/80 mm. */
const NEC_368_30 = 1524 * 80;

describe('a job seen in a mirror', () => {
  const flipped = (side: Side): Side => (side === 'left' ? 'right' : 'left');
  const mirroredTurn = (turn: Turn): Turn => (turn === 'left' || turn === 'right' ? flipped(turn) : turn);
  const otherSide = (run: Run): Run => ({ ...run, conductorSide: flipped(run.conductorSide) });
  const mirrored = (run: Run): Run => ({
    ...otherSide(run),
    feed: { ...run.feed, branchSide: run.feed.branchSide && flipped(run.feed.branchSide) },
    legs: run.legs.map((leg) => ({ ...leg, turn: mirroredTurn(leg.turn) })),
  });
  const laidOutAs = ({ job, run }: Laid, change: (run: Run) => Run) =>
    layoutJob({ ...job, runs: job.runs.map(change) })[job.runs.indexOf(run)]!;
  const spans = ({ pieces }: RunLayout) => pieces.map(({ from, to, kind }) => ({ from, to, kind }));
  const sameDistances = (here: RunLayout, there: RunLayout) => {
    expect(spans(there)).toEqual(spans(here));
    expect(there.joints).toEqual(here.joints);
    expect(there.supports).toEqual(here.supports);
    expect(there.taps.map(({ at }) => at)).toEqual(here.taps.map(({ at }) => at));
  };
  const hands = (layout: RunLayout) => layout.pieces.flatMap(({ hand }) => hand ?? []);
  const swap = (word: string, one: string, other: string) =>
    word.includes(one) ? word.replace(one, other) : word.replace(other, one);

  it('has every piece, joint, hanger and tap-off where it was, every elbow of its kind, and the tees of the other hand', () => {
    let tees = 0;
    for (const laid of [...covered, ...hung]) {
      const there = laidOutAs(laid, mirrored);
      sameDistances(laid.layout, there);
      const expected = hands(laid.layout).map((hand) => (isTeeHand(hand) ? swap(hand, 'left', 'right') : hand));
      expect(hands(there)).toEqual(expected);
      expect(there.facing.map(({ relative }) => relative)).toEqual(
        laid.layout.facing.map(({ relative }) => flipped(relative)),
      );
      expect(there.path.map(({ y }) => y + 0)).toEqual(laid.layout.path.map(({ y }) => 0 - y));
      tees += expected.filter(isTeeHand).length;
    }
    expect(tees).toBeGreaterThan(20);
  });

  it('with the conductors alone on the other side, has every level elbow of the other kind and near tees far', () => {
    let level = 0;
    for (const laid of [...covered, ...hung]) {
      const there = laidOutAs(laid, (run) => (run === laid.run ? otherSide(run) : run));
      sameDistances(laid.layout, there);
      const expected = hands(laid.layout).map((hand) => {
        if (isTeeHand(hand)) return swap(hand, 'near', 'far');
        return hand.startsWith('slot') ? hand : swap(hand, 'inside', 'outside');
      });
      expect(hands(there)).toEqual(expected);
      level += expected.filter((hand) => hand === 'inside' || hand === 'outside').length;
    }
    expect(level).toBeGreaterThan(50);
  });
});

function isTeeHand(hand: string): boolean {
  return hand.startsWith('near') || hand.startsWith('far');
}

/** Straight pieces between fittings; a centre feed parts them too. */
function partsOf(pieces: readonly PlacedPiece[], centreFeedAt: number | null): PlacedPiece[][] {
  const parts: PlacedPiece[][] = [[]];
  for (const piece of pieces) {
    if (piece.from === centreFeedAt) parts.push([]);
    if (piece.kind === 'elbow' || piece.kind === 'tee') parts.push([]);
    else parts.at(-1)!.push(piece);
  }
  return parts;
}
