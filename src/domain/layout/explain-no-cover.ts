import type { Length } from '../units/length.ts';
import type { UncoveredPart } from './cover-run.ts';
import { type CoverTest, coverTest } from './cover-test.ts';
import { slotsOf } from './coverable-lengths.ts';
import { cutThatWouldDo } from './cut-that-would-do.ts';
import { type FeedRoom, feedShifts } from './feed-shift.ts';
import type { JointBar } from './joint-bars.ts';
import { leastTapMove } from './least-tap-move.ts';
import { nearestCoverable } from './nearest-coverable.ts';
import { listed, type Say } from './say.ts';
import type { SectionShop } from './section-shop.ts';

/**
 * One sentence or two: what bars a covering of this part, and the nearest changes that were found to make one. `feed` is the
 * room that its feed can be shifted in; null for a part that does not begin at one.
 */
export function explainNoCover(
  shop: SectionShop,
  part: UncoveredPart,
  bars: readonly JointBar[],
  feed: FeedRoom | null,
  say: Say,
): string {
  if (shop.sums.cutShort) return tooFine(shop, part, say);
  const covers = coverTest(shop, part);
  const needed = neededLength(part);
  const tries = triesFor(shop, part);
  const addsUp = covers([]);
  const guilty = addsUp ? barsAlone(covers, bars, tries) : [];
  const why = addsUp ? whatBars(guilty, bars, say) : whatStockLacks(shop, part, needed, say);
  const remedies = [
    ...shiftsOfFeed(shop, part, bars, feed, say),
    ...tapMoves(shop, part, bars, guilty, tries, say),
    ...otherLengths(shop, part, needed, bars, say),
    ...cutRemedy(shop, part, needed, bars, say),
  ];
  const advice = remedies.length === 0 ? 'no change of length or cut was found that helps' : remedies.join(', or ');
  return `${nameOf(part, say)} cannot be covered: ${why}. ${sentence(advice)}.`;
}

/** Marks that the tries of one kind may set, all together. */
const MOST_MARKS = 50_000_000;
const MOST_TRIES = 2000;
/** Bars that are told as guilty alone, and bars that are told together. */
const MOST_NAMED = 3;
const MOST_SHOWN = 6;

/** How often a covering may be looked for: the longer and the finer the part, the less often. */
function triesFor(shop: SectionShop, part: UncoveredPart): number {
  const marks = slotsOf(shop, ('reach' in part ? part.hardStop : part.to) - part.from);
  return Math.min(MOST_TRIES, Math.max(10, Math.floor(MOST_MARKS / (marks + 1))));
}

/** Bars without any one of which the part could be covered, in their order; of very many, the longest are looked at. */
function barsAlone(covers: CoverTest, bars: readonly JointBar[], tries: number): readonly JointBar[] {
  const longest = [...bars].sort((a, b) => b.to - b.from - (a.to - a.from)).slice(0, tries);
  const alone = new Set(longest.filter((bar) => covers(bars.filter((other) => other !== bar))));
  return bars.filter((bar) => alone.has(bar)).slice(0, MOST_NAMED);
}

/** Length that is wanted of the part: as drawn, kept within what its end allows. */
function neededLength(part: UncoveredPart): Length {
  if (!('reach' in part)) return part.to - part.from;
  return Math.min(part.hardStop, Math.max(part.reach, part.nominal)) - part.from;
}

function nameOf(part: UncoveredPart, say: Say): string {
  if (!('reach' in part) || part.reach === part.hardStop) {
    const to = 'reach' in part ? part.hardStop : part.to;
    return `The straight part from ${say(part.from)} to ${say(to)} (${say(to - part.from)} long)`;
  }
  const ends = `${say(part.reach)} to ${say(part.hardStop)}`;
  return `The straight part from ${say(part.from)}, to end anywhere in ${ends} (${say(part.reach - part.from)} to ${say(part.hardStop - part.from)} long),`;
}

/** Stock alone (and the type's cuts) does not add up: which lengths on either side do. */
function whatStockLacks(shop: SectionShop, part: UncoveredPart, needed: Length, say: Say): string {
  const stock = `stock of ${listed(shop.stock.map((piece) => say(piece.length)))}${cutWords(shop, say)}`;
  const shorter = nearestCoverable(shop, part, needed, [], 'shorter');
  if (shorter === null) return `${say(needed)} cannot be made up from ${stock}`;
  return `${say(shorter)} is reachable with ${stock}, ${say(needed)} is not, ${say(needed - shorter)} short of stock`;
}

function cutWords(shop: SectionShop, say: Say): string {
  if (shop.cut === null) return '';
  return ` and one factory cut of ${say(shop.cut.min)} to ${say(shop.cut.max)} in steps of ${say(shop.cut.step)}`;
}

/** Sections would add up were it not for the bars: the one bar that does it, or all that do it together. */
function whatBars(guilty: readonly JointBar[], bars: readonly JointBar[], say: Say): string {
  const interval = (bar: JointBar) => `${bar.name} keeps joints out of ${say(bar.from)} to ${say(bar.to)}`;
  if (guilty.length > 0)
    return `${listed(guilty.map(interval))}, and without ${guilty.length > 1 ? 'any one of these' : 'that'} it could be`;
  const more = bars.length - MOST_SHOWN;
  const shown = bars.slice(0, MOST_SHOWN).map(interval);
  const names = more > 0 ? [...shown, `${more} more`] : shown;
  return `the places kept free of joints bar every joint together (${listed(names)})`;
}

function tapMoves(
  shop: SectionShop,
  part: UncoveredPart,
  bars: readonly JointBar[],
  guilty: readonly JointBar[],
  tries: number,
  say: Say,
): string[] {
  return guilty.flatMap((bar) => {
    const to = leastTapMove(shop, part, bars, bar, tries);
    if (to === null || bar.tap === null) return [];
    return [`move tap ${bar.tap.id} (fixed) by ${say(Math.abs(to - bar.tap.at))} to ${say(to)}`];
  });
}

function shiftsOfFeed(
  shop: SectionShop,
  part: UncoveredPart,
  bars: readonly JointBar[],
  feed: FeedRoom | null,
  say: Say,
): string[] {
  if (feed === null) return [];
  const { along, against } = feedShifts(shop, part, bars, feed);
  const ways = [
    ...(along === null ? [] : [`${say(along.by)} along the heading (${say(along.length)} left to cover)`]),
    ...(against === null
      ? []
      : [`${say(against.by)} against ${along === null ? 'the heading' : 'it'} (${say(against.length)})`]),
  ];
  return ways.length === 0 ? [] : [`shift the feed ${ways.join(' or ')}`];
}

function otherLengths(
  shop: SectionShop,
  part: UncoveredPart,
  needed: Length,
  bars: readonly JointBar[],
  say: Say,
): string[] {
  const shorter = nearestCoverable(shop, part, needed, bars, 'shorter');
  const longer = nearestCoverable(shop, part, needed, bars, 'longer');
  const words: string[] = [];
  if (shorter !== null) words.push(`shorten the part by ${say(needed - shorter)} to ${say(shorter)}`);
  if (longer !== null) words.push(`lengthen it by ${say(longer - needed)} to ${say(longer)}`);
  return words.length === 0 ? [] : [words.join(' or ')];
}

function cutRemedy(
  shop: SectionShop,
  part: UncoveredPart,
  needed: Length,
  bars: readonly JointBar[],
  say: Say,
): string[] {
  const cut = cutThatWouldDo(shop, part, needed, bars);
  if (cut === null) return [];
  const outside = shop.cut === null ? ' (the sheet states none)' : ' (outside what the sheet states)';
  return [`have a factory cut of ${say(cut)} allowed${outside}`];
}

function tooFine(shop: SectionShop, part: UncoveredPart, say: Say): string {
  const stock = listed(shop.stock.map((piece) => say(piece.length)));
  return `${nameOf(part, say)} was not covered: stock of ${stock} adds up to too many different lengths to search them all; enter the lengths that can really be had.`;
}

function sentence(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
