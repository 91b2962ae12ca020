import type { Finding } from '../finding.ts';
import type { BuswayType, Run } from '../model.ts';
import type { PlacedFitting } from './place-fittings.ts';
import { sheetName } from './sheet-name.ts';

type UnknownRule = 'limit.unknown' | 'weight.unknown';

interface Limit {
  readonly absent: boolean;
  /** Whether the run has anything that the limit would bind. */
  readonly matters: boolean;
  readonly what: string;
  readonly effect: string;
}

/**
 * One warning for each limit or weight that is not stated although this run has something for it to bind: unknown is never a
 * pass. Spacing and overhang of supports are left to the supports, which cannot be laid out without them.
 */
export function unknownLimits(run: Run, type: BuswayType, fittings: readonly PlacedFitting[]): readonly Finding[] {
  const limits = [...crossingLimits(run, type), ...tapLimits(run, type), ...supportLimits(run, type, fittings)];
  return [
    ...warnings('limit.unknown', limits, run, type),
    ...warnings('weight.unknown', weights(run, type, fittings), run, type),
  ];
}

function warnings(rule: UnknownRule, limits: readonly Limit[], run: Run, type: BuswayType): Finding[] {
  return limits
    .filter((limit) => limit.absent && limit.matters)
    .map(({ what, effect }) => ({
      rule,
      severity: 'warning' as const,
      run: run.id,
      at: null,
      message: `${what} is not stated: ${effect}. Enter it; until then this is unknown, not a pass.`,
      source: sheetName(type),
    }));
}

const UNBOUND = 'nothing was held to it';

function crossingLimits(run: Run, { crossing }: BuswayType): Limit[] {
  const matters = run.crossings.length > 0;
  const inside = 'only the thickness itself was kept free';
  return [
    {
      absent: crossing.jointClear === null,
      matters,
      what: 'The clearance of a joint from a wall or floor',
      effect: inside,
    },
    {
      absent: crossing.supportClear === null,
      matters,
      what: 'The clearance of a hanger from a wall or floor',
      effect: inside,
    },
  ];
}

function tapLimits(run: Run, { tap, tapFront }: BuswayType): Limit[] {
  const any = run.taps.length > 0;
  const { boxDepth, clearRoom } = tapFront;
  return [
    { absent: tap.jointClear === null, matters: any, what: 'The clearance of a tap-off from a joint', effect: UNBOUND },
    { absent: tap.endClear === null, matters: any, what: 'The clearance of a tap-off from the end', effect: UNBOUND },
    { absent: tap.minSpacing === null, matters: any, what: 'The least distance between tap-offs', effect: UNBOUND },
    {
      absent: tap.boxLength === null,
      matters: any,
      what: 'The length of the tap-off box',
      effect: 'no overlap was looked for',
    },
    {
      absent: boxDepth === null,
      matters: any && clearRoom !== null,
      what: 'How far the tap-off box stands out',
      effect: 'no room before it was looked for',
    },
    {
      absent: clearRoom === null,
      matters: any && boxDepth !== null,
      what: 'The room to be kept free before a tap-off box',
      effect: 'only boxes in the same space were looked for',
    },
  ];
}

function supportLimits(run: Run, { support }: BuswayType, fittings: readonly PlacedFitting[]): Limit[] {
  const branchOrFitting = fittings.length > 0 || run.feed.kind === 'tee';
  return [
    {
      absent: support.jointClear === null,
      matters: true,
      what: 'The clearance of a hanger from a joint',
      effect: UNBOUND,
    },
    {
      absent: support.fittingWithin === null,
      matters: branchOrFitting,
      what: 'The greatest distance of a hanger from a fitting',
      effect: UNBOUND,
    },
    {
      absent: run.supportCapacityKg === null,
      matters: true,
      what: 'What one hanger may carry',
      effect: 'no load was held to it',
    },
  ];
}

function weights(run: Run, type: BuswayType, fittings: readonly PlacedFitting[]): Limit[] {
  const has = (kind: PlacedFitting['kind']) => fittings.some((fitting) => fitting.kind === kind);
  const nought = 'it counts 0 kg in the hanger loads';
  return [
    {
      absent: type.feed.weightKg === null,
      matters: run.feed.kind !== 'tee',
      what: 'The weight of the feed',
      effect: nought,
    },
    { absent: type.elbow?.weightKg == null, matters: has('elbow'), what: 'The weight of an elbow', effect: nought },
    { absent: type.tee?.weightKg == null, matters: has('tee'), what: 'The weight of a tee', effect: nought },
    {
      absent: run.taps.some((tap) => tap.weightKg === null),
      matters: true,
      what: `The weight of ${run.taps.filter((tap) => tap.weightKg === null).length} of the ${run.taps.length} tap-offs`,
      effect: nought,
    },
  ];
}
