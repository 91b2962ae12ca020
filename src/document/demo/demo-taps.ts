import type { TapDocument } from '../schema/tap.ts';
import type { DemoPlace } from './demo-run.ts';
import { feet, pounds } from './feet.ts';

const ONE_POLE = ['L1', 'L2', 'L3'] as const;
/** Invented load of a tap in VA; three neighbours on three phases share one. */
const LOADS_VA = [2_400, 2_000, 2_600, 1_800, 2_200, 2_500] as const;
const THREE_POLE_VA = 3_600;
/** The tap types of the last floor are not ordered yet, so their phases may still be changed. */
const LAST_FLOOR = 4;

interface Cabinets {
  /** Each cabinet has a second tap with the same label on the other side. */
  readonly paired: boolean;
}

/** The taps of a demo run at the given feet: one-pole ones on the phases in turn, the last two of a row three-pole. */
export function demoTaps(place: DemoPlace, atFeet: readonly number[], { paired }: Cabinets): TapDocument[] {
  return atFeet.map((at, i) => demoTap(place, i, at, paired));
}

function demoTap(place: DemoPlace, i: number, at: number, paired: boolean): TapDocument {
  const cabinet = `F${place.floor}-R${twoDigits(place.row)}-C${twoDigits(i + 1)}`;
  return {
    id: `T${twoDigits(i + 1)}`,
    atMm: feet(at),
    ...demoLoad(place, i),
    deviceA: 30,
    interruptingKA: 22,
    powerFactor: 0.97,
    continuous: true,
    movablePhase: place.floor === LAST_FLOOR && i < 18,
    serves: `cabinet ${cabinet}`,
    ...(paired && { pair: cabinet }),
    dropMm: feet(4),
    weightKg: pounds(20),
  };
}

function demoLoad({ row }: DemoPlace, i: number): Pick<TapDocument, 'phases' | 'neutral' | 'loadVA' | 'thirdHarmonic'> {
  if (i >= 18) return { phases: 'L1-L2-L3', neutral: true, loadVA: THREE_POLE_VA, thirdHarmonic: 0.05 };
  const base = LOADS_VA[Math.floor(i / 3) % LOADS_VA.length] ?? 2_000;
  const uneven = 40 * ((i * 7 + row * 3) % 5);
  return { phases: ONE_POLE[i % 3] ?? 'L1', neutral: true, loadVA: base + uneven, thirdHarmonic: 0.1 };
}

function twoDigits(value: number): string {
  return String(value).padStart(2, '0');
}
