import type { Tap } from '../../domain/model.ts';
import { fromMm } from '../../domain/units/length.ts';
import type { TapDocument } from '../schema/tap.ts';
import { lengthOrNull } from './to-length.ts';

/** A tap with the contract's defaults: power factor 1, continuous, and a neutral for one pole only. */
export function toTap(tap: TapDocument): Tap {
  return {
    id: tap.id,
    place: toPlace(tap),
    fixed: tap.fixed ?? false,
    phases: tap.phases,
    neutral: tap.neutral ?? isOnePole(tap.phases),
    deviceA: tap.deviceA,
    interruptingKA: tap.interruptingKA ?? null,
    load: toLoad(tap),
    powerFactor: tap.powerFactor ?? 1,
    continuous: tap.continuous ?? true,
    thirdHarmonic: tap.thirdHarmonic ?? 0,
    movablePhase: tap.movablePhase ?? false,
    serves: tap.serves ?? null,
    pair: tap.pair ?? null,
    drop: lengthOrNull(tap.dropMm),
    weightKg: tap.weightKg ?? null,
  };
}

function isOnePole(phases: TapDocument['phases']): boolean {
  return !phases.includes('-');
}

function toPlace(tap: TapDocument): Tap['place'] {
  if (tap.near) return { near: { x: fromMm(tap.near.xMm), y: fromMm(tap.near.yMm) } };
  if (tap.atMm === undefined) throw new Error(`tap ${tap.id} has no place: the document was not checked`);
  return { at: fromMm(tap.atMm) };
}

function toLoad(tap: TapDocument): Tap['load'] {
  if (tap.loadA !== undefined) return { kind: 'A', amperes: tap.loadA };
  if (tap.loadVA === undefined) throw new Error(`tap ${tap.id} has no load: the document was not checked`);
  return { kind: 'VA', va: tap.loadVA };
}
