import { z } from 'zod';
import { PAPER_NAMES, type PaperName } from '../../views/drawings/sheet/papers.ts';
import { scalesOf } from '../../views/drawings/sheet/scales.ts';
import { refuse } from '../actions/refused.ts';
import type { UnitSystem } from '../domain/model.ts';

/** What a person may choose of a printed drawing; empty is the usual. */
export const drawingQuery = z.object({
  paper: z.string().max(20).default(''),
  /** 1:`scale`. */
  scale: z.string().max(20).default(''),
});

export interface Chosen {
  readonly paper: PaperName;
  readonly ratio: number | null;
}

/** Letter where lengths are in feet, A4 where they are metric, and the scale that fits, unless others are named that there are. */
export function chosenPrint({ paper, scale }: z.infer<typeof drawingQuery>, units: UnitSystem): Chosen {
  const usual: PaperName = units === 'ft-in' ? 'letter' : 'a4';
  const named = paper === '' ? usual : PAPER_NAMES.find((name) => name === paper.toLowerCase());
  if (named === undefined)
    return refuse({
      code: 'invalid',
      faults: [{ path: 'paper', message: `There is no paper "${paper}" here.`, remedy: 'Choose letter or a4.' }],
    });
  if (scale === '') return { paper: named, ratio: null };
  const scales = scalesOf(units);
  const found = scales.find(({ ratio }) => String(ratio) === scale);
  if (found !== undefined) return { paper: named, ratio: found.ratio };
  return refuse({
    code: 'invalid',
    faults: [
      {
        path: 'scale',
        message: `1:${scale} is not among the scales of a drawing in ${units === 'ft-in' ? 'feet and inches' : 'metres'}.`,
        remedy: `Choose one of ${scales.map(({ ratio }) => ratio).join(', ')}, or leave it out for the scale that fits.`,
      },
    ],
  });
}
