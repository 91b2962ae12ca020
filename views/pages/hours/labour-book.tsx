import type { JSX } from 'preact';
import type { Activity } from '../../../src/domain/labour/result.ts';
import type { LabourBook, UnitSystem } from '../../../src/domain/model.ts';
import { formatLength } from '../../../src/domain/units/format-length.ts';
import { formatMoney } from '../../../src/domain/units/money.ts';
import { DataTable } from '../../components/data-table.tsx';
import { DefinitionList } from '../../components/definition-list.tsx';
import { Part } from '../../components/part.tsx';
import { activityWord } from '../../words/activities.ts';
import { factorWord } from '../../words/factors.ts';

export interface LabourBookPartProps {
  readonly book: LabourBook;
  readonly units: UnitSystem;
  readonly currency: string;
  readonly mayMoney: boolean;
}

/** "up to 250 A, 5'-0"": what a band of hours is for. */
function bandWords({ upToA, upTo }: LabourBook['activities'][number]['bands'][number], units: UnitSystem): string {
  const said = [upToA === null ? '' : `${upToA} A`, upTo === null ? '' : formatLength(upTo, units)];
  return `up to ${said.filter(Boolean).join(', ')}`;
}

/** The company's hours and factors that the figures above come from. */
export function LabourBookPart({ book, units, currency, mayMoney }: LabourBookPartProps): JSX.Element {
  const { factors, learning } = book;
  return (
    <Part title={`Labour book ${book.version}`} id="labour-book">
      <DataTable
        caption="Base hours of one unit"
        rows={book.activities}
        keyOf={(activity) => activity.id}
        narrow="scrolls"
        columns={[
          { head: 'Activity', kind: 'name', cell: (activity) => activityWord(activity.id as Activity) },
          { head: 'Unit', cell: (activity) => activity.unit },
          { head: 'Low', kind: 'number', cell: (activity) => activity.low },
          { head: 'Likely', kind: 'number', cell: (activity) => activity.likely },
          { head: 'High', kind: 'number', cell: (activity) => activity.high },
          {
            head: 'By rating and length',
            cell: (activity) => activity.bands.map((band) => `${bandWords(band, units)}: ${band.likely}`).join('; '),
          },
          {
            head: 'Factors that apply',
            cell: (activity) => <span class="whole">{activity.factors.map(factorWord).join(', ')}</span>,
          },
        ]}
      />
      <div class="columns">
        <DefinitionList
          entries={[
            {
              term: 'Mounting height',
              value:
                factors.height.map((step) => `over ${formatLength(step.over, units)} +${step.percent} %`).join('; ') ||
                'no factor',
            },
            {
              term: 'Ceiling',
              value: `open +${factors.congestion.open} %, normal +${factors.congestion.normal} %, tight +${factors.congestion.tight} %`,
            },
            { term: 'Each storey', value: `+${factors.storeyPercentEach} %` },
            { term: 'Beside equipment in service', value: `+${factors.livePercent} %` },
            ...book.jobConditions.map(({ name, percent, activities }) => ({
              term: name,
              value: `${percent > 0 ? '+' : ''}${percent} % on the whole job${activities === null ? '' : `: ${activities.map((id) => activityWord(id as Activity)).join(', ')}`}`,
            })),
          ]}
        />
        <DefinitionList
          entries={[
            {
              term: 'Learning',
              value:
                learning === null
                  ? 'none'
                  : `${Number((learning.rate * 100).toFixed(2))} % unit curve over ${learning.over}s; the base hours stand for repeat ${learning.referenceRepeat}`,
            },
            {
              term: 'Non-productive',
              value:
                book.nonProductiveDay === null
                  ? `${book.nonProductivePercent} % in every part`
                  : `${book.nonProductiveDay.lostHours} h of a day of ${book.nonProductiveDay.dayHours} h, in every part`,
            },
            ...(mayMoney
              ? book.crew.map((one) => ({
                  term: one.role,
                  value: `${one.number} at ${formatMoney(one.ratePerHour, currency)} an hour${one.burdenPercent > 0 ? ` and ${one.burdenPercent} % burden` : ''}, effectiveness ${one.effectiveness}`,
                }))
              : []),
            ...(mayMoney && book.overtime !== null
              ? [
                  {
                    term: 'Overtime',
                    value: `${book.overtime.hoursPerWeek} h a week, beyond ${book.overtime.straightHours} h paid × ${book.overtime.premium}; productivity ${book.overtime.productivity}`,
                  },
                ]
              : []),
          ]}
        />
      </div>
    </Part>
  );
}
