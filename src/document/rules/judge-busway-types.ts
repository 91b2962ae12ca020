import { UNITS_PER_MM } from '../../domain/units/length.ts';
import type { Fault, PathPart } from '../fault.ts';
import { type Salvaged, wasGiven } from '../parsing/salvaged.ts';
import { sayNumber, sayValue } from '../parsing/say.ts';
import type { BuswayTypeDocument } from '../schema/busway-type.ts';
import type { JobDocument } from '../schema/document.ts';
import { faultAt } from './fault-at.ts';

type Type = Salvaged<BuswayTypeDocument>;

/** More cut lengths than this to choose from is a step in the wrong unit. */
const MOST_CUTS = 1_000_000;

export function judgeBuswayTypes(document: Salvaged<JobDocument>): Fault[] {
  return (document.buswayTypes ?? []).flatMap((type, i) => {
    if (!type) return [];
    const path = ['buswayTypes', i];
    return [...judgeCut(type, path), ...judgeNeutral(type, path), ...judgeSectionPrices(type, path)];
  });
}

function judgeCut({ factoryCut }: Type, path: readonly PathPart[]): Fault[] {
  const { minMm, maxMm, stepMm } = factoryCut ?? {};
  const place = [...path, 'factoryCut'];
  const faults: Fault[] = [];
  if (minMm !== undefined && maxMm !== undefined && minMm > maxMm) {
    const message = `The shortest cut, ${sayNumber(minMm)} mm, is longer than the longest, ${sayNumber(maxMm)} mm.`;
    faults.push(faultAt([...place, 'minMm'], message, 'Let minMm be at most maxMm: were the two swapped?'));
  }
  if (stepMm !== undefined && !isWholeUnits(stepMm)) {
    const message = `stepMm is ${sayNumber(stepMm)}, which is not a multiple of 0.0125 mm.`;
    const remedy = `Lengths are exact to 0.0125 mm: 1/16 in is 1.5875. The nearest step is ${sayNumber(nearestUnits(stepMm))}.`;
    faults.push(faultAt([...place, 'stepMm'], message, remedy));
  } else if (
    minMm !== undefined &&
    maxMm !== undefined &&
    stepMm !== undefined &&
    (maxMm - minMm) / stepMm > MOST_CUTS
  ) {
    const message = `A step of ${sayNumber(stepMm)} mm makes more than ${sayNumber(MOST_CUTS)} cut lengths.`;
    faults.push(faultAt([...place, 'stepMm'], message, 'Give the step that the sheet states, in millimetres.'));
  }
  return faults;
}

function isWholeUnits(mm: number): boolean {
  return Math.abs(mm * UNITS_PER_MM - Math.round(mm * UNITS_PER_MM)) < 1e-6;
}

function nearestUnits(mm: number): number {
  return Math.max(1, Math.round(mm * UNITS_PER_MM)) / UNITS_PER_MM;
}

function judgeNeutral(type: Type, path: readonly PathPart[]): Fault[] {
  if (type.neutral !== 'double' || wasGiven(type, 'neutralOhmPerKm')) return [];
  const message = `Type ${sayValue(type.id ?? '')} has a double neutral, but no neutralOhmPerKm.`;
  return [
    faultAt([...path, 'neutralOhmPerKm'], message, 'Give the resistance and reactance of the neutral from the sheet.'),
  ];
}

function judgeSectionPrices({ prices }: Type, path: readonly PathPart[]): Fault[] {
  const seen = new Set<number>();
  return (prices?.sections ?? []).flatMap((section, i) => {
    if (section?.lengthMm === undefined || !seen.has(section.lengthMm)) {
      if (section?.lengthMm !== undefined) seen.add(section.lengthMm);
      return [];
    }
    const message = `A section of ${sayNumber(section.lengthMm)} mm has two prices.`;
    return [faultAt([...path, 'prices', 'sections', i, 'lengthMm'], message, 'Keep the price that holds.')];
  });
}
