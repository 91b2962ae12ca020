import type { Finding } from '../../finding.ts';
import { itemWord } from '../item-words.ts';
import { bidFinding, type Judged } from './judged.ts';

/** Unit prices that are offered below what the thing costs, or below what the build-up gives. */
export function judgeUnits({ unitPrices }: Judged): readonly Finding[] {
  return (unitPrices?.lines ?? []).flatMap(({ item, offered, worked, cost }) => {
    if (offered === null || cost === null || worked === null) return [];
    if (offered < Math.round(cost))
      return [
        bidFinding(
          'bid.unit-price',
          'warning',
          `The unit price offered for ${itemWord(item)} is below their own cost before overhead: raise it, or work out why.`,
        ),
      ];
    return offered < worked
      ? [
          bidFinding(
            'bid.unit-price',
            'note',
            `The unit price offered for ${itemWord(item)} is below what the build-up gives: each one more earns less than the bid does.`,
          ),
        ]
      : [];
  });
}
