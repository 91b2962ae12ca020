import type { JSX } from 'preact';
import { overtimeProductivity, type Schedule } from '../../src/domain/labour/scheduled-overtime.ts';
import { type Entered, type FaultOf, faultProps } from '../components/fault-of.ts';
import { SelectField, TextField } from '../components/field.tsx';
import { FragmentPage, type FragmentPageProps } from '../components/fragment-page.tsx';
import { InventedNotice } from '../components/invented-notice.tsx';
import { Notice } from '../components/notice.tsx';
import { RowFields } from '../components/row-fields.tsx';
import { labourBookEntryWord } from '../words/labour-book-entries.ts';
import { ActivityFields } from './labour-book/activity-fields.tsx';
import { ActivityTicks } from './labour-book/activity-ticks.tsx';

export interface LabourBookPageProps extends Omit<FragmentPageProps, 'children' | 'wordOf' | 'save'> {
  readonly entered: Entered;
  readonly faultOf: FaultOf;
  readonly units: 'ft-in' | 'metric';
  readonly currency: string;
  readonly crewRows: number;
  readonly conditionRows: number;
}

/** The company's hours, factors and crew, for this job. */
export function LabourBookPage(props: LabourBookPageProps): JSX.Element {
  const { entered, faultOf, units, currency, crewRows, conditionRows, ...form } = props;
  const entry = (path: string) => ({
    name: path,
    label: labourBookEntryWord(path),
    value: entered[path] ?? '',
    ...faultProps(faultOf, path),
  });
  const figure = (path: string, hint?: string) => (
    <TextField {...entry(path)} kind="number" {...(hint === undefined ? {} : { hint })} />
  );
  return (
    <FragmentPage {...form} wordOf={labourBookEntryWord} save="Save the book for this job">
      <InventedNotice version={entered.bookVersion} />
      <Notice
        kind="note"
        text="Hours belong to the company: take them from jobs of your own. Give a changed book another version, so that prints of the old one can be told apart."
      />
      <div class="fields">
        <TextField {...entry('bookVersion')} need="required" hint="As 2026-2." />
        <SelectField
          {...entry('policy')}
          options={[
            { value: 'add', word: 'are added to each other' },
            { value: 'compound', word: 'compound' },
          ]}
        />
        {figure('nonProductivePercent', 'In every part of the hours.')}
        {figure('nonProductiveDay.lostHours', 'In place of the percentage: give one of the two.')}
        {figure('nonProductiveDay.dayHours')}
      </div>
      <ActivityFields entered={entered} faultOf={faultOf} units={units} />
      <h2>Conditions of work</h2>
      <div class="fields">
        <TextField
          {...entry('factors.height')}
          hint={units === 'ft-in' ? `As 12'-0": 10; 15'-0": 20.` : 'As 3.6 m: 10; 4.5 m: 20.'}
        />
        {figure('factors.congestion.open')}
        {figure('factors.congestion.normal')}
        {figure('factors.congestion.tight')}
        {figure('factors.storeyPercentEach')}
        {figure('factors.livePercent')}
      </div>
      <RowFields
        caption="Conditions of the whole job"
        hint="Such as night shift, long weeks, winter, temporary power, a new crew: hours added in %, below 0 where work goes quicker. Without ticks of its own, one bears on every activity with a tick above."
        group="jobConditions"
        noun="condition"
        fields={[
          { name: 'name', head: 'Condition', kind: 'text' },
          { name: 'percent', head: 'Added, %' },
        ]}
        rows={conditionRows}
        entered={entered}
        faultOf={faultOf}
      />
      {conditionsToTick(entered, conditionRows).map((row) => (
        <ActivityTicks
          key={row}
          name={`jobConditions[${row}].activities`}
          of={`Felt by condition ${row + 1}`}
          none="every activity with a tick above"
          entered={entered}
        />
      ))}
      <h2>Learning</h2>
      <div class="fields">
        {figure('learning.rate', '0.95: 5 % less at each doubling. Empty: no learning.')}
        {figure('learning.referenceRepeat')}
        <SelectField
          {...entry('learning.over')}
          options={[
            { value: 'run', word: 'runs' },
            { value: 'level', word: 'levels' },
          ]}
        />
      </div>
      <ActivityTicks
        name="learning.activities"
        of="Learned"
        none="everything but tests, their papers and the punch list"
        entered={entered}
      />
      <RowFields
        caption="Crew"
        remark="for the cost of a productive hour"
        hint={`Rates in ${currency} an hour, as paid. Effectiveness is the productive part of an hour: 0.5 for a foreman who is half his time on the tools. Burden is what is paid on top in taxes, insurance and benefits. Empty rows are left out.`}
        group="crew"
        noun="crew member"
        fields={[
          { name: 'role', head: 'Role', kind: 'text' },
          { name: 'number', head: 'Number' },
          { name: 'ratePerHour', head: 'Rate' },
          { name: 'effectiveness', head: 'Effectiveness' },
          { name: 'burdenPercent', head: 'Burden, %' },
        ]}
        rows={crewRows}
        entered={entered}
        faultOf={faultOf}
      />
      <h2>Overtime</h2>
      <div class="fields">
        {figure('overtime.hoursPerWeek', 'Empty: no overtime.')}
        {figure('overtime.straightHours', 'Empty: 40.')}
        {figure('overtime.premium', 'Empty: 1.5, time and a half.')}
        {figure('overtime.productivity', `Empty: 1, nobody tires. ${kept(50)}; ${kept(60)} (Storm, table 9).`)}
      </div>
      <h2>Range</h2>
      <div class="fields">
        {figure('correlation', 'One crew and one site drive all activities: 0 gives false comfort.')}
        {figure('trials')}
        {figure('seed')}
      </div>
    </FragmentPage>
  );
}

/** Rows that hold a condition, and the first that is empty: more can be ticked once they are saved. */
function conditionsToTick(entered: Entered, rows: number): readonly number[] {
  const all = Array.from({ length: rows }, (_, row) => row);
  const isFilled = (row: number) => (entered[`jobConditions[${row}].name`] ?? '') !== '';
  const firstEmpty = all.find((row) => !isFilled(row));
  return all.filter((row) => isFilled(row) || row === firstEmpty);
}

/** "50 h a week keep 0.93 over 4 weeks, 0.87 over 8". */
function kept(schedule: Schedule): string {
  const over = (weeks: number) => `${overtimeProductivity(schedule, weeks).toFixed(2)} over ${weeks}`;
  return `${schedule} h a week keep ${over(4)} weeks, ${over(12)}`;
}
