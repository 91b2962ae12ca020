import type { JSX } from 'preact';
import { LINE_ACTIVITIES } from '../../../src/domain/labour/result.ts';
import { Button } from '../../components/button.tsx';
import { type Conflict, ConflictList } from '../../components/conflict-list.tsx';
import { type Entered, type FaultOf, faultProps } from '../../components/fault-of.ts';
import { SelectField, TextArea, TextField, TickField } from '../../components/field.tsx';
import { Form } from '../../components/form.tsx';
import { type FormFault, FormFaults } from '../../components/form-faults.tsx';
import { Part } from '../../components/part.tsx';
import { RowFields } from '../../components/row-fields.tsx';
import { activityWord } from '../../words/activities.ts';

export interface CrewFormProps {
  readonly action: string;
  readonly csrf: string;
  readonly version?: number;
  readonly entered: Entered;
  readonly faultOf: FaultOf;
  readonly summary: readonly FormFault[];
  readonly conflicts: readonly Conflict[] | null;
  readonly levels: readonly { readonly id: string; readonly name: string }[];
  readonly rows: number;
}

const DAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];

/** How the job is manned. */
export function CrewForm(props: CrewFormProps): JSX.Element {
  const { action, csrf, version, entered, faultOf, summary, conflicts, levels, rows } = props;
  const entry = (name: string, label: string) => ({
    name,
    label,
    value: entered[name] ?? '',
    ...faultProps(faultOf, name),
  });
  return (
    <Part title="How the job is manned" id="plan">
      <FormFaults faults={summary} />
      {conflicts !== null && <ConflictList conflicts={conflicts} theirsHref={action} wordOf={crewEntryWord} />}
      <Form action={action} csrf={csrf} {...(version === undefined ? {} : { version })}>
        <div class="fields">
          <TextField {...entry('start', crewEntryWord('start'))} kind="date" need="required" />
          <TextField {...entry('hoursPerDay', crewEntryWord('hoursPerDay'))} kind="number" unit="h" />
          <TextField
            {...entry('bufferDays', crewEntryWord('bufferDays'))}
            kind="number"
            unit="days"
            hint="Working days between one crew leaving a level and the next starting there."
          />
          <TextArea {...entry('holidays', crewEntryWord('holidays'))} hint="One date a line, as 2026-12-25." />
        </div>
        <div class="row">
          {DAYS.map((word, index) => {
            const { value, ...day } = entry(`weekday.${index + 1}`, word);
            return <TickField key={word} {...day} ticked={value === 'yes' ? 'yes' : 'no'} />;
          })}
        </div>
        <RowFields
          caption="Crews, in the order in which they follow each other"
          hint="Labour hours ÷ (heads × hours a day) are the days on a level. Empty rows are left out."
          group="crews"
          noun="crew"
          fields={[
            { name: 'name', head: 'Crew', kind: 'text' },
            { name: 'heads', head: 'Heads' },
            { name: 'lifts', head: 'Lifts' },
          ]}
          rows={rows}
          entered={entered}
          faultOf={faultOf}
        />
        <details open={LINE_ACTIVITIES.some((activity) => faultOf(`activity.${activity}`) !== undefined)}>
          <summary>Which crew does what</summary>
          <div class="fields">
            {LINE_ACTIVITIES.map((activity) => (
              <SelectField
                key={activity}
                {...entry(`activity.${activity}`, activityWord(activity))}
                options={[
                  { value: '', word: 'no crew of this plan' },
                  ...Array.from({ length: rows }, (_, row) => ({
                    value: String(row + 1),
                    word: `${row + 1} ${entered[`crews[${row}].name`] ?? ''}`.trim(),
                  })),
                ]}
              />
            ))}
          </div>
        </details>
        <details open={levels.some(({ id }) => (entered[`released.${id}`] ?? '') !== '')}>
          <summary>Levels that may not be entered before a date</summary>
          <div class="fields">
            {levels.map(({ id, name }) => (
              <TextField key={id} {...entry(`released.${id}`, name)} kind="date" />
            ))}
          </div>
        </details>
        <Button kind="lead">{conflicts === null ? 'Save the plan' : 'Keep mine: save over theirs'}</Button>
      </Form>
    </Part>
  );
}

const WORDS: Readonly<Record<string, string>> = {
  start: 'First day of work',
  hoursPerDay: 'Hours a day',
  bufferDays: 'Days between crews',
  holidays: 'Days that are not worked',
};

/** What the form calls an entry. */
export function crewEntryWord(field: string): string {
  const [group, rest = ''] = field.split('.');
  if (group === 'weekday') return DAYS[Number(rest) - 1] ?? 'Days of the week';
  if (group === 'activity') return activityWord(LINE_ACTIVITIES.find((activity) => activity === rest) ?? 'extra');
  if (group === 'released') return `Release of ${rest}`;
  return WORDS[field] ?? field;
}
