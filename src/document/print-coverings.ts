import { z } from 'zod';
import { lossWords } from '../domain/layout/covering-loss.ts';
import type { RunCoverings } from '../domain/layout/coverings.ts';
import { sayIn } from '../domain/layout/say.ts';
import type { Project } from '../domain/model.ts';
import { toMm } from '../domain/units/length.ts';
import { formatMoney } from '../domain/units/money.ts';
import { printedLayoutSchema } from './print-layout.ts';

const minor = z.number().describe('Minor units.');

/** The best coverings of a run as the API shows them: millimetres, and money for the office alone. */
export const printedCoveringsSchema = z.object({
  compared: z
    .boolean()
    .describe('False: there are too many coverings to go through them all, or none was chosen; one stands alone.'),
  held: z.boolean().describe('True: the run is kept to what the floor substituted, so nothing was chosen by cost.'),
  coverings: z.array(
    z.object({
      lengthMm: z.number(),
      sections: printedLayoutSchema.shape.sections,
      joints: printedLayoutSchema.shape.joints,
      cost: z
        .object({ pieces: minor, cuts: minor, jointKit: minor, jointLabour: minor, total: minor })
        .optional()
        .describe('For the office alone. An absent price counts nought.'),
      lostBy: z
        .enum(['cost', 'end', 'joints', 'cut', 'order'])
        .nullable()
        .describe('The first rule by which it and the winner differ; null for the winner.'),
      why: z.string().nullable().describe('The same as a sentence, with amounts for the office alone.'),
    }),
  ),
});
export type PrintedCoverings = z.infer<typeof printedCoveringsSchema>;

/** `withMoney` false leaves out every amount, in the sentences too. */
export function printCoverings(
  { coverings, compared, held }: RunCoverings,
  { units, currency }: Pick<Project, 'units' | 'currency'>,
  withMoney: boolean,
): PrintedCoverings {
  const money = withMoney ? (amount: number) => formatMoney(amount, currency) : null;
  return {
    compared,
    held,
    coverings: coverings.map(({ length, pieces, joints, cost, loss }) => ({
      lengthMm: toMm(length),
      sections: pieces.map(({ from, to, kind, hand }) => ({ fromMm: toMm(from), toMm: toMm(to), kind, hand })),
      joints: joints.map(({ at }) => ({ atMm: toMm(at) })),
      ...(withMoney && { cost: amountsOf(cost) }),
      lostBy: loss === null ? null : loss.by,
      why: loss && lossWords(loss, sayIn(units), money),
    })),
  };
}

function amountsOf({ pieces, cuts, jointKit, jointLabour, total }: RunCoverings['coverings'][number]['cost']) {
  return { pieces, cuts, jointKit, jointLabour, total };
}
