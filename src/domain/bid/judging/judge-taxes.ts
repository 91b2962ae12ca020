import type { Finding } from '../../finding.ts';
import type { Taxable } from '../bid-entries.ts';
import { bidFinding, type Judged } from './judged.ts';

/** Taxes on a base that is unusual or empty, and quotes that hold tax already or do not say so. */
export function judgeTaxes(of: Judged): readonly Finding[] {
  return [...judgeBases(of), ...judgeInside(of)];
}

const UNUSUAL: readonly Taxable[] = ['labour', 'supervision', 'permit'];

function judgeBases({ bid, lines }: Judged): Finding[] {
  const has = (line: Taxable) => lines.some((own) => own.line === line && own.amount !== 0);
  return bid.taxes.flatMap(({ name, percent, on }) => {
    const empty = on.filter((line) => !has(line));
    const unusual = on.filter((line) => UNUSUAL.includes(line) && has(line));
    const base = (message: string) => bidFinding('bid.tax-base', 'warning', message, 'local tax law, which decides');
    return [
      ...unusual.map((line) =>
        base(
          `"${name}" takes ${percent} % of ${line}, which a sales tax seldom does: take it off the base unless the local law says so.`,
        ),
      ),
      ...(empty.length === on.length
        ? [
            base(
              `"${name}" is on ${empty.join(', ')}, of which the bid has nothing: it taxes nothing. Choose its base anew.`,
            ),
          ]
        : []),
    ];
  });
}

function judgeInside({ bid }: Judged): Finding[] {
  const isTaxed = (line: 'materials' | 'subcontracts') =>
    (line === 'materials' && bid.taxPercent !== null) || bid.taxes.some(({ on }) => on.includes(line));
  const chosen = bid.quotes.filter((quote) => quote.chosen);
  const inside = chosen
    .filter(({ tax, goesTo }) => tax === 'in' && isTaxed(goesTo))
    .map(({ id, supplier }) =>
      bidFinding(
        'bid.tax-base',
        'note',
        `Quote ${id} of ${supplier} has the tax in it, so its amounts are left out of the base: check that it is the same tax.`,
      ),
    );
  const unsaid = chosen
    .filter(({ tax }) => tax === null)
    .map(({ id, supplier }) =>
      bidFinding(
        'bid.tax-base',
        'warning',
        `Quote ${id} of ${supplier} does not say whether tax is in it, and is taxed as if it were not: ask.`,
      ),
    );
  return [...inside, ...unsaid];
}
