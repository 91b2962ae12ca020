import type { UnitSystem } from '../../domain/model.ts';
import { METRE } from '../../domain/units/length.ts';
import type { LengthRange } from '../../domain/units/parse-length.ts';
import type { LengthUnit } from '../../domain/units/read-length.ts';
import { sayNumber } from '../parsing/say.ts';
import type { TapDocument } from '../schema/tap.ts';
import { type Cell, readFigure, readLengthCell } from './cell.ts';

/** Where the equipment that a tap serves may stand, either side of the origin. */
const PLACE: LengthRange = { min: -2_000 * METRE, max: 2_000 * METRE };
/** Nothing that is tapped from busway draws less: a figure under it was meant in kVA. */
const LEAST_VA = 50;

type Place = Pick<TapDocument, 'atMm' | 'near'>;

/** A distance along the run, or `near X; Y`: the plan position of what the tap serves. */
export function readPlace(
  units: UnitSystem,
  unit: LengthUnit | null,
  range: LengthRange,
): (text: string) => Cell<Place> {
  return (text) => {
    const [, x, y] = /^near\s+([^;]+);\s*([^;]+)$/i.exec(text) ?? [];
    if (x === undefined || y === undefined) {
      const at = readLengthCell(units, unit, range)(text);
      return 'problem' in at ? at : { ...at, value: { atMm: at.value } };
    }
    const [east, north] = [x, y].map((part) => readLengthCell(units, unit, PLACE)(part.trim()));
    if (!east || 'problem' in east) return east ?? NO_PLACE;
    if (!north || 'problem' in north) return north ?? NO_PLACE;
    return { value: { near: { xMm: east.value, yMm: north.value } } };
  };
}

const NO_PLACE = {
  problem: 'The place cannot be read.',
  remedy: 'Write a distance, or near X; Y, such as near 12\'-0"; 8\'-6".',
};

const PHASE_WORDS: Readonly<Record<string, TapDocument['phases']>> = {
  L1: 'L1',
  L2: 'L2',
  L3: 'L3',
  L1L2: 'L1-L2',
  L2L1: 'L1-L2',
  L2L3: 'L2-L3',
  L3L2: 'L2-L3',
  L3L1: 'L3-L1',
  L1L3: 'L3-L1',
  L1L2L3: 'L1-L2-L3',
};

/** `L1`, `L1-L2`, `L1/L2/L3`; letters are refused, because here A and B are feed sides. */
export function readPhases(text: string): Cell<TapDocument['phases']> {
  const plain = text.toUpperCase().replace(/[\s,/+–-]/g, '');
  const found = Object.hasOwn(PHASE_WORDS, plain) ? PHASE_WORDS[plain] : undefined;
  if (found !== undefined) return { value: found };
  if (/^(PHASE)?[ABC]{1,3}$/.test(plain)) {
    return { problem: `"${text}" could be a feed side.`, remedy: 'A-side or phase L1? Phases are L1, L2 and L3.' };
  }
  return {
    problem: `"${text.slice(0, 40)}" does not name phases.`,
    remedy: 'Write L1, L2, L3, L1-L2, L2-L3, L3-L1 or L1-L2-L3.',
  };
}

/** Yes or no, in the ways that people write it. */
export function readYesNo(text: string): Cell<boolean> {
  const plain = text.toLowerCase();
  if (['yes', 'y', 'true', '1'].includes(plain)) return { value: true };
  if (['no', 'n', 'false', '0'].includes(plain)) return { value: false };
  return {
    problem: `"${text.slice(0, 40)}" is neither yes nor no.`,
    remedy: 'Write yes, no, or leave the cell empty.',
  };
}

const readVA = readFigure({ '': 1, va: 1, kva: 1_000 }, 'the load in VA, such as 4200 or 4.2 kVA');

export function readLoadVA(text: string): Cell<number> {
  if (/\d\s*k?w$/i.test(text)) {
    return {
      problem: `${text} is power in watts, not VA.`,
      remedy: 'Divide it by the power factor, and give the load in VA.',
    };
  }
  const read = readVA(text);
  const isSmall = 'value' in read && read.value > 0 && read.value < LEAST_VA;
  if (!isSmall) return read;
  const meant = sayNumber(read.value * 1_000);
  return {
    problem: `${sayNumber(read.value)} VA is next to nothing.`,
    remedy: `Was it kVA? Then write ${meant}, or ${text} kVA.`,
  };
}

/** From 0 to 1; a per cent sign is understood, per cent without one is asked about. */
export function readPowerFactor(text: string): Cell<number> {
  const read = readFigure({ '': 1, '%': 0.01 }, 'a power factor from 0 to 1, such as 0.95')(text);
  if ('problem' in read || (read.value > 0 && read.value <= 1)) return read;
  const meant = read.value > 1 && read.value <= 100 ? `Did you mean ${sayNumber(read.value / 100)}?` : 'Such as 0.95.';
  return { problem: `A power factor is a number from 0 to 1, not ${sayNumber(read.value)}.`, remedy: meant };
}
