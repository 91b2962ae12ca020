import type { PlacedPiece, PlacedTap, RunLayout } from '../layout/result.ts';
import type { BuswayType, Crossing, Run, Tap } from '../model.ts';
import { type Length, toMetres } from '../units/length.ts';
import { groupBy } from './group-by.ts';
import type { TakeoffLine } from './result.ts';

/** Nuts on one hanger rod: load nut, lock nut and the one at the structure. Common practice, without a source. */
export const NUTS_PER_ROD = 3;

type Count = Partial<TakeoffLine> & Pick<TakeoffLine, 'item' | 'places'>;

/** The lines of one run, counted from its sound layout, in the order that the document lists the items. */
export function countRun(run: Run, type: BuswayType, layout: RunLayout): readonly TakeoffLine[] {
  const counts = [
    ...pieceCounts(layout.pieces),
    ...jointCounts(type, layout),
    ...endCounts(run, layout),
    slotClosure(run, type, layout),
    ...supportCounts(run, layout),
    ...sealCounts(run.crossings),
    ...tapCounts(run, layout),
  ];
  return counts.map((count) => lineOf(run, type, count)).filter((line) => line.quantity > 0);
}

/** A line counts its places unless it says otherwise. */
function lineOf(run: Run, type: BuswayType, count: Count): TakeoffLine {
  return {
    item: count.item,
    kind: count.kind ?? null,
    hand: count.hand ?? null,
    length: count.length ?? null,
    type: type.id,
    run: run.id,
    level: run.level,
    quantity: count.quantity ?? count.places.length,
    unit: count.unit ?? 'each',
    places: [...count.places].sort((a, b) => a - b),
  };
}

function pieceCounts(pieces: readonly PlacedPiece[]): Count[] {
  const places = (group: readonly PlacedPiece[]) => group.map((piece) => piece.from);
  const sections = groupBy(pieces.filter(isStraight), (piece) => `${piece.kind} ${piece.to - piece.from}`)
    .map((group) => ({
      item: 'section' as const,
      kind: group[0].kind,
      length: group[0].to - group[0].from,
      places: places(group),
    }))
    .sort((a, b) => b.length - a.length || (a.kind > b.kind ? -1 : 1));
  const fittings = (item: 'elbow' | 'tee') =>
    groupBy(
      pieces.filter((piece) => piece.kind === item),
      (piece) => piece.hand ?? '',
    ).map((group) => ({ item, hand: group[0].hand, places: places(group) }));
  return [...sections, ...fittings('elbow'), ...fittings('tee')];
}

function isStraight(piece: PlacedPiece): boolean {
  return piece.kind === 'stock' || piece.kind === 'cut';
}

function jointCounts(type: BuswayType, layout: RunLayout): Count[] {
  const places = layout.joints.map((joint) => joint.at);
  return [
    { item: 'clamp', quantity: places.length * type.joint.clamps, places },
    { item: 'contact-set', quantity: places.length * type.joint.contactSets, places },
    { item: 'bolt', quantity: places.length * type.joint.bolts, places },
  ];
}

/** A branch is fed through its tee, which stands in the parent run; a centre feed leaves both ends open. */
function endCounts(run: Run, layout: RunLayout): Count[] {
  switch (run.feed.kind) {
    case 'end':
      return [
        { item: 'end-feed', places: [0] },
        { item: 'end-cap', places: [layout.length] },
      ];
    case 'tee':
      return [{ item: 'end-cap', places: [layout.length] }];
    case 'centre':
      return [
        { item: 'end-feed', kind: 'centre', places: [run.feed.at ?? Math.round(layout.length / 2)] },
        { item: 'end-cap', places: [0, layout.length] },
      ];
  }
}

/** Slot to close, in metres: the straight sections less what the tap boxes cover; an unknown box covers nothing. */
function slotClosure(run: Run, type: BuswayType, layout: RunLayout): Count {
  const straight = layout.pieces.filter(isStraight);
  const slot = straight.reduce((sum, piece) => sum + piece.to - piece.from, 0);
  const covered = run.taps.length * (type.tap.boxLength ?? 0);
  return {
    item: 'slot-closure',
    quantity: toMetres(Math.max(0, slot - covered)),
    unit: 'm',
    places: straight.map((piece) => piece.from),
  };
}

function supportCounts(run: Run, layout: RunLayout): Count[] {
  const places = layout.supports.map((support) => support.at);
  const counts: Count[] = [{ item: 'support', places }];
  if (run.rod !== null || run.drop !== null) {
    counts.push({ item: 'rod', kind: run.rod, length: run.drop, places });
  }
  if (run.attachment !== null) counts.push({ item: 'anchor', kind: run.attachment, places });
  if (run.rod !== null || run.drop !== null) {
    counts.push({ item: 'nut', kind: run.rod, quantity: places.length * NUTS_PER_ROD, places });
  }
  return counts;
}

function sealCounts(crossings: readonly Crossing[]): Count[] {
  const rated = crossings.filter((crossing) => crossing.kind === 'fire-wall' || crossing.fireRatingMin > 0);
  return groupBy(rated, (crossing) => String(crossing.fireRatingMin)).map((group) => ({
    item: 'fire-seal',
    kind: group[0].fireRatingMin > 0 ? `${group[0].fireRatingMin} min` : null,
    places: group.map((crossing) => crossing.at),
  }));
}

function tapCounts(run: Run, layout: RunLayout): Count[] {
  const at = new Map(layout.taps.map((tap: PlacedTap) => [tap.id, tap.at]));
  const places = (group: readonly Tap[]): Length[] => group.map((tap) => placeOf(tap, at));
  const taps = groupBy(run.taps, tapKind).map(
    (group): Count => ({
      item: 'tap',
      kind: tapKind(group[0]),
      places: places(group),
    }),
  );
  const drops = groupBy(
    run.taps.filter((tap) => tap.drop !== null),
    (tap) => String(tap.drop),
  )
    .map((group): Count => ({ item: 'drop', length: group[0].drop, places: places(group) }))
    .sort((a, b) => (b.length ?? 0) - (a.length ?? 0));
  const labelled = [...places(run.taps), ...layout.joints.map((joint) => joint.at)];
  return [...taps, ...drops, { item: 'label', places: labelled }];
}

/** What to order: the connection and the device, "L1-N 30 A". */
export function tapKind(tap: Tap): string {
  return `${tap.phases}${tap.neutral ? '-N' : ''} ${tap.deviceA} A`;
}

function placeOf(tap: Tap, at: ReadonlyMap<string, Length>): Length {
  const placed = at.get(tap.id);
  if (placed !== undefined) return placed;
  if ('at' in tap.place) return tap.place.at;
  throw new Error(`tap ${tap.id} has no place in the layout`);
}
