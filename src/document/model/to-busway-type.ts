import type { BuswayType, Fitting, Prices, UnitSystem } from '../../domain/model.ts';
import { fromMm, type Length } from '../../domain/units/length.ts';
import type { BuswayTypeDocument } from '../schema/busway-type.ts';
import { lengthOrNull } from './to-length.ts';

/** Step of the supports where the sheet names none: 1 in, or 50 mm in a metric project. */
const STEP_MM = { 'ft-in': 25.4, metric: 50 } as const;

/** A busway type with the contract's defaults; a limit that its sheet does not state is null. */
export function toBuswayType(type: BuswayTypeDocument, units: UnitSystem): BuswayType {
  return {
    id: type.id,
    sheet: type.sheet ?? null,
    ratedCurrentA: type.ratedCurrentA,
    ratedVoltageV: type.ratedVoltageV,
    poles: type.poles,
    neutral: type.neutral,
    hundredPercentRated: type.hundredPercentRated ?? false,
    phaseOhmPerKm: type.phaseOhmPerKm,
    neutralOhmPerKm: type.neutralOhmPerKm ?? null,
    shortCircuitKA: type.shortCircuitKA,
    shortCircuitCycles: type.shortCircuitCycles ?? null,
    weightKgPerM: type.weightKgPerM,
    stockLengths: longestFirst(type.stockLengthsMm),
    factoryCut: type.factoryCut && {
      min: fromMm(type.factoryCut.minMm),
      max: fromMm(type.factoryCut.maxMm),
      step: fromMm(type.factoryCut.stepMm),
    },
    feed: { joins: type.feed?.joins ?? false, weightKg: type.feed?.weightKg ?? null },
    support: toSupport(type.support, units),
    tap: toTapLimits(type.tap),
    tapFront: {
      boxDepth: lengthOrNull(type.tap?.boxDepthMm),
      boxHeight: lengthOrNull(type.tap?.boxHeightMm),
      clearRoom: lengthOrNull(type.tap?.faceClearMm),
    },
    crossing: {
      jointClear: lengthOrNull(type.crossing?.jointClearMm),
      supportClear: lengthOrNull(type.crossing?.supportClearMm),
    },
    joint: toJoint(type.joint),
    elbow: toFitting(type.fittings?.elbow),
    tee: toFitting(type.fittings?.tee),
    words: {
      clamp: type.words?.clamp ?? null,
      contactSet: type.words?.contactSet ?? null,
      seatingTool: type.words?.seatingTool ?? null,
    },
    prices: toPrices(type.prices),
  };
}

function longestFirst(lengthsMm: readonly number[]): Length[] {
  return [...new Set(lengthsMm.map(fromMm))].sort((a, b) => b - a);
}

function toSupport(support: BuswayTypeDocument['support'], units: UnitSystem): BuswayType['support'] {
  return {
    maxSpacing: lengthOrNull(support?.maxSpacingMm),
    maxEndOverhang: lengthOrNull(support?.maxEndOverhangMm),
    jointClear: lengthOrNull(support?.jointClearMm),
    step: fromMm(support?.stepMm ?? STEP_MM[units]),
    fittingWithin: lengthOrNull(support?.fittingWithinMm),
    source: support?.source ?? null,
  };
}

function toTapLimits(tap: BuswayTypeDocument['tap']): BuswayType['tap'] {
  return {
    jointClear: lengthOrNull(tap?.jointClearMm),
    endClear: lengthOrNull(tap?.endClearMm),
    minSpacing: lengthOrNull(tap?.minSpacingMm),
    boxLength: lengthOrNull(tap?.boxLengthMm),
  };
}

function toJoint(joint: BuswayTypeDocument['joint']): BuswayType['joint'] {
  return {
    clamps: joint?.clamps ?? 2,
    contactSets: joint?.contactSets ?? 1,
    bolts: joint?.bolts ?? 2,
    torqueNm: joint?.torqueNm ?? null,
    steps: joint?.steps ?? null,
  };
}

function toFitting(fitting: NonNullable<BuswayTypeDocument['fittings']>['elbow']): Fitting | null {
  if (!fitting) return null;
  return { leg: fromMm(fitting.legMm), weightKg: fitting.weightKg ?? null, handed: fitting.handed ?? true };
}

function toPrices(prices: BuswayTypeDocument['prices']): Prices {
  return {
    sections: (prices?.sections ?? []).map(({ lengthMm, price }) => ({ length: fromMm(lengthMm), price })),
    sectionPerM: prices?.sectionPerM ?? null,
    cutSurcharge: prices?.cutSurcharge ?? null,
    jointKit: prices?.jointKit ?? null,
    elbow: prices?.elbow ?? null,
    tee: prices?.tee ?? null,
    endFeed: prices?.endFeed ?? null,
    endCap: prices?.endCap ?? null,
    support: prices?.support ?? null,
    tap: prices?.tap ?? null,
    drop: prices?.drop ?? null,
  };
}
