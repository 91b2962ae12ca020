import type { JSX } from 'preact';
import { crewHour, overtimeFactor } from '../../../src/domain/labour/crew-cost.ts';
import type { Labour } from '../../../src/domain/labour/result.ts';
import type { LabourBook, Overtime } from '../../../src/domain/model.ts';
import { formatMoney } from '../../../src/domain/units/money.ts';
import { formatHours } from '../../../src/domain/units/quantities.ts';
import { DefinitionList } from '../../components/definition-list.tsx';
import { Drawing } from '../../components/drawing.tsx';
import { Part } from '../../components/part.tsx';
import { Working } from '../../components/working.tsx';
import { RangeBar } from '../../drawings/range-bar.tsx';

export interface HoursRangePartProps {
  readonly labour: Labour;
  readonly book: LabourBook;
  readonly currency: string;
  readonly mayMoney: boolean;
}

/** Fits a phone as it is. */
const PHONE = 366;

/** The hours as a range, and what one productive hour costs. */
export function HoursRangePart({ labour, book, currency, mayMoney }: HoursRangePartProps): JSX.Element {
  const { range, costPerProductiveHour: cost } = labour;
  const source = `PERT-beta of low, likely and high of each activity; ${book.trials.toLocaleString('en-US')} trials, seed ${book.seed}, correlation ${book.correlation} between activities.`;
  return (
    <Part title="Hours of the job" id="range">
      <Drawing label="Range of the hours">
        <RangeBar
          range={range}
          of="hours of the job"
          write={(value) => Math.round(value).toLocaleString('en-US')}
          ink="screen"
          width={PHONE}
        />
      </Drawing>
      <div class="columns">
        <DefinitionList
          entries={[
            { term: 'Likely', value: formatHours(range.likely) },
            { term: 'P10', value: formatHours(range.p10) },
            { term: 'P50', value: formatHours(range.p50) },
            { term: 'P80', value: formatHours(range.p80) },
            { term: 'P90', value: formatHours(range.p90) },
          ]}
        />
        <DefinitionList
          entries={[
            {
              term: 'Mean',
              value: (
                <Working
                  figure={formatHours(range.mean)}
                  of="the mean of the hours"
                  formula="mean of each activity = (low + 4 × likely + high) / 6, times its factors; summed"
                  inputs={[{ name: 'labour book', value: book.version, source: 'three points for each activity' }]}
                  source={source}
                />
              ),
            },
            {
              term: 'Standard deviation',
              value: (
                <Working
                  figure={formatHours(range.sd)}
                  of="the standard deviation of the hours"
                  formula="variance = Σ Σ ρ σi σj, with σ² = (μ − low)(high − μ) / 7"
                  inputs={[
                    { name: 'correlation ρ', value: String(book.correlation), source: `labour book ${book.version}` },
                  ]}
                  source={source}
                />
              ),
            },
            {
              term: 'Factors',
              value:
                book.policy === 'add'
                  ? 'are added to each other: the company’s policy'
                  : 'compound: the company’s policy',
            },
            ...(mayMoney
              ? [{ term: 'One productive hour', value: <ProductiveHour {...{ book, currency, cost }} /> }]
              : []),
          ]}
        />
      </div>
    </Part>
  );
}

function ProductiveHour({ book, currency, cost }: { book: LabourBook; currency: string; cost: number | null }) {
  if (cost === null) return <span class="soft">no crew in the labour book</span>;
  const money = (minor: number) => formatMoney(Math.round(minor), currency);
  const { paid, productive } = crewHour(book);
  const hasBurden = book.crew.some(({ burdenPercent }) => burdenPercent > 0);
  return (
    <Working
      figure={money(cost)}
      of="the cost of a productive hour"
      formula={`cost = Σ (number × rate${hasBurden ? ' × (1 + burden)' : ''})${book.overtime === null ? '' : ' × overtime'} / Σ (number × effectiveness)${book.overtime === null ? '' : ' / productivity'}`}
      filledIn={`${money(cost)} = ${money(paid)} / ${Number(productive.toFixed(4))}`}
      inputs={[
        ...book.crew.map((one) => ({
          name: one.role,
          value: `${one.number} × ${money(one.ratePerHour)}${one.burdenPercent > 0 ? ` + ${one.burdenPercent} %` : ''}, effectiveness ${one.effectiveness}`,
          source: `labour book ${book.version}`,
        })),
        ...(book.overtime === null ? [] : [overtimeInput(book.overtime, book.version)]),
      ]}
      source="Of the crew as it is made up; a mean of the rates would be too low wherever somebody works less than the whole hour on the tools."
    />
  );
}

function overtimeInput(overtime: Overtime, version: string) {
  const { hoursPerWeek, straightHours, premium, productivity } = overtime;
  return {
    name: 'overtime',
    value: `${hoursPerWeek} h a week, beyond ${straightHours} h paid × ${premium}: ${Number(overtimeFactor(overtime).toFixed(4))} h paid an hour worked; productivity ${productivity}`,
    source: `labour book ${version}`,
  };
}
