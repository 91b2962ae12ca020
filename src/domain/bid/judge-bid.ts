import type { Finding } from '../finding.ts';
import { judgeQuotes } from './judging/judge-quotes.ts';
import { judgeTaxes } from './judging/judge-taxes.ts';
import { judgeTwice } from './judging/judge-twice.ts';
import { judgeUnits } from './judging/judge-units.ts';
import type { Judged } from './judging/judged.ts';

/**
 * What in a bid is worth a second look though it can be reckoned: taxes on a base that is unusual or empty, freight, tests
 * or seals in it twice, quotes that cannot be judged or do not say what they hold, unit prices below cost.
 */
export function judgeBid(of: Judged): readonly Finding[] {
  return [...judgeTaxes(of), ...judgeQuotes(of), ...judgeTwice(of), ...judgeUnits(of)];
}
