import type { FieldHold, Run, RunFeed, Zone } from '../../domain/model.ts';
import { fromMm } from '../../domain/units/length.ts';
import type { RunDocument } from '../schema/run.ts';
import { lengthOrNull } from './to-length.ts';
import { toTap } from './to-tap.ts';

/** Length that hanger rod is bought in where the document names none: 10 ft. */
const ROD_STOCK_MM = 3_048;

/** A run with the contract's defaults. A start that is not given is the origin; a structure that is not given, continuous. */
export function toRun(run: RunDocument): Run {
  return {
    id: run.id,
    level: run.level,
    area: run.area ?? null,
    type: run.type,
    side: run.side ?? null,
    pairedRun: run.pairedRun ?? null,
    start: { x: fromMm(run.start?.xMm ?? 0), y: fromMm(run.start?.yMm ?? 0), z: fromMm(run.start?.zMm ?? 0) },
    hasStart: run.start !== undefined,
    headingDeg: run.headingDeg ?? 0,
    conductorSide: run.conductorSide,
    feed: toFeed(run.feed),
    end: run.end ? { reach: fromMm(run.end.reachMm), hardStop: fromMm(run.end.hardStopMm) } : null,
    legs: run.legs.map((leg) => ({
      length: fromMm(leg.lengthMm),
      turn: leg.turn,
      tapsMustFace: leg.tapsMustFace ?? null,
    })),
    crossings: (run.crossings ?? []).map((crossing) => ({
      at: fromMm(crossing.atMm),
      thickness: fromMm(crossing.thicknessMm),
      kind: crossing.kind,
      fireRatingMin: crossing.fireRatingMin ?? 0,
    })),
    noJoint: toZones(run.noJoint),
    noSupport: toZones(run.noSupport),
    structure: toStructure(run.structure),
    drop: lengthOrNull(run.dropMm),
    rod: run.rod ?? null,
    rodStock: fromMm(run.rodStockMm ?? ROD_STOCK_MM),
    attachment: run.attachment ?? null,
    supportCapacityKg: run.supportCapacityKg ?? null,
    taps: (run.taps ?? []).map(toTap),
    fieldHold: run.fieldHold ? toFieldHold(run.fieldHold) : null,
  };
}

function toFieldHold(hold: NonNullable<RunDocument['fieldHold']>): FieldHold {
  const sections = hold.sections.map((section) => ({
    from: fromMm(section.fromMm),
    to: fromMm(section.toMm),
    kind: section.kind,
  }));
  return { sections, supports: hold.supportsMm.map(fromMm) };
}

function toFeed(feed: RunDocument['feed']): RunFeed {
  return {
    kind: feed.kind,
    fromRun: feed.fromRun ?? null,
    at: lengthOrNull(feed.atMm),
    branchSide: feed.branchSide ?? null,
    supply: feed.supply ?? null,
    deviceA: feed.deviceA ?? null,
    deviceHundredPercent: feed.deviceHundredPercent ?? false,
    faultKA: feed.faultKA ?? null,
    xOverR: feed.xOverR ?? null,
    cable: feed.cable
      ? {
          lengthM: feed.cable.lengthM,
          ohmPerKm: feed.cable.ohmPerKm,
          parallel: feed.cable.parallel ?? 1,
          neutralOhmPerKm: feed.cable.neutralOhmPerKm ?? null,
        }
      : null,
    terminations: feed.terminations ?? 0,
  };
}

function toZones(zones: RunDocument['noJoint']): Zone[] {
  return (zones ?? []).map((zone) => ({
    from: fromMm(zone.fromMm),
    to: fromMm(zone.toMm),
    reason: zone.reason ?? null,
  }));
}

function toStructure(structure: RunDocument['structure']): Run['structure'] {
  if (structure?.kind !== 'grid') return { kind: 'continuous' };
  return { kind: 'grid', pitch: fromMm(structure.pitchMm), offset: fromMm(structure.offsetMm) };
}
