import type { Finding } from '../finding.ts';
import type { BuswayType, Run } from '../model.ts';
import type { UncoveredPart } from './cover-run.ts';
import { explainNoCover } from './explain-no-cover.ts';
import { feedRoom } from './feed-shift.ts';
import type { JointBar } from './joint-bars.ts';
import type { Say } from './say.ts';
import { type ShopList, sectionShop } from './section-shop.ts';
import { sheetName } from './sheet-name.ts';

/** A stop for each straight part that no covering fits, with the nearest changes that make one. */
export function noCoverFindings(
  run: Run,
  type: BuswayType,
  list: ShopList,
  uncovered: readonly UncoveredPart[],
  bars: readonly JointBar[],
  say: Say,
): readonly Finding[] {
  // Room to lengthen a part into: the next sum of stock is at most one longest piece away, and bars may ask for another.
  const spare = 2 * Math.max(...list.stockLengths, list.factoryCut?.max ?? 0);
  return uncovered.map((part) => {
    const end = 'reach' in part ? part.hardStop : part.to;
    const shop = sectionShop(list, end - part.from + spare);
    const inPart = bars.filter((bar) => bar.to > part.from && bar.from < end);
    const message = explainNoCover(shop, part, inPart, feedRoom(run, type, part), say);
    return { rule: 'section.no-cover', severity: 'stop', run: run.id, at: part.from, message, source: sheetName(type) };
  });
}
