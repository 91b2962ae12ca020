import type { Finding } from '../../finding.ts';
import { TAXABLE, type Taxable } from '../bid-entries.ts';
import { bidFinding, type Judged } from './judged.ts';

/** Taxes on a base that is unusual, empty or shared, and quotes that hold tax already or do not say so. */
export function judgeTaxes(of: Judged): readonly Finding[] {
  return [...judgeBases(of), ...judgeShared(of), ...judgeInside(of)];
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

/** A state's and a county's tax on one line are usual; the same tax under two names costs the bid. Said once for each pair of bases. */
function judgeShared({ bid, lines }: Judged): Finding[] {
  const shared = new Map<string, { names: readonly string[]; percent: number; on: Taxable[] }>();
  for (const line of TAXABLE) {
    const due = bid.taxes.filter(({ on }) => on.includes(line));
    if (due.length < 2 || !lines.some((own) => own.line === line && own.amount !== 0)) continue;
    const names = due.map(({ name }) => `"${name}"`);
    const known = shared.get(names.join());
    if (known) known.on.push(line);
    else shared.set(names.join(), { names, percent: due.reduce((sum, { percent }) => sum + percent, 0), on: [line] });
  }
  return [...shared.values()].map(({ names, percent, on }) =>
    bidFinding(
      'bid.tax-twice',
      'note',
      `${names.join(' and ')} are both on ${on.join(', ')}, ${Number(percent.toFixed(4))} % together: right for taxes of two authorities; take the line off one of them where they are the same tax.`,
      'local tax law, which decides',
    ),
  );
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
