import type { Finding } from '../finding.ts';
import type { BuswayType, Run } from '../model.ts';
import type { PlacedFitting } from './place-fittings.ts';
import { listed, type Say } from './say.ts';
import { isPriced } from './section-shop.ts';

/** One note naming everything that counted 0 in the choice of the covering because nobody has given its price. */
export function unpricedNote(
  run: Run,
  type: BuswayType,
  fittings: readonly PlacedFitting[],
  jointLabour: number,
  say: Say,
): readonly Finding[] {
  const { prices } = type;
  const has = (kind: PlacedFitting['kind']) => fittings.some((fitting) => fitting.kind === kind);
  const sections = type.stockLengths
    .filter((length) => !isPriced(prices, length))
    .map((length) => `section ${say(length)}`);
  const rest = [
    { name: 'factory cuts by length', absent: type.factoryCut !== null && prices.sectionPerM === null },
    { name: 'cut surcharge', absent: type.factoryCut !== null && prices.cutSurcharge === null },
    { name: 'joint kit', absent: prices.jointKit === null },
    { name: 'joint labour', absent: jointLabour === 0 },
    { name: 'elbow', absent: has('elbow') && prices.elbow === null },
    { name: 'tee', absent: has('tee') && prices.tee === null },
  ];
  const names = [...sections, ...rest.filter(({ absent }) => absent).map(({ name }) => name)];
  if (names.length === 0) return [];
  const isLopsided = sections.length > 0 && sections.length < type.stockLengths.length;
  const trap = isLopsided ? ' Other lengths have a price, so one without looks free and is taken before them.' : '';
  const message = `No price is given for ${listed(names)}: each counted 0 when the sections were chosen.${trap} Enter prices to choose by cost.`;
  return [
    {
      rule: 'price.absent',
      severity: 'note',
      run: run.id,
      at: null,
      message,
      source: `prices of ${type.id}, as entered`,
    },
  ];
}
