import type { JSX } from 'preact';
import type { ReportedActivity } from '../../../../src/domain/quality/record.ts';
import { Button } from '../../../components/button.tsx';
import { SelectField, TextArea, TextField } from '../../../components/field.tsx';
import { Part } from '../../../components/part.tsx';
import { activityWord } from '../../../words/activities.ts';
import type { EndsPageProps } from '../ends.tsx';
import { entriesOf } from '../entries.ts';
import { RunForm } from './run-form.tsx';

/** A sort of work that is reported by count: what was reported of what the run has; null where nobody has counted it. */
export interface WorkLine {
  readonly activity: ReportedActivity;
  readonly done: number | 'all';
  readonly of: number | null;
}

/** Work that no piece, joint, hanger or tap-off shows: it is counted by the people who did it. */
export function OtherWork(props: EndsPageProps): JSX.Element {
  const { work, trouble, freshId, viewer } = props;
  const entries = entriesOf(trouble, 'activity', freshId);
  const reported = work.filter(({ done }) => done !== 0);
  return (
    <Part title="Other work on this run" id="work">
      {reported.length === 0 ? (
        <p class="soft">Nothing is reported yet.</p>
      ) : (
        <ul class="plain">
          {reported.map(({ activity, done, of }) => (
            <li key={activity}>
              {activityWord(activity)}: {done === 'all' ? 'all of the run' : `${done}${of === null ? '' : ` of ${of}`}`}
            </li>
          ))}
        </ul>
      )}
      {viewer.mayInstall && (
        <details class="group" open={trouble?.form === 'activity'}>
          <summary>Report work done</summary>
          <RunForm {...props} entries={entries} does="activity" form="activity" label="work done">
            <SelectField
              {...entries.text('activity')}
              label="What was done"
              options={work.map(({ activity, of }) => ({
                value: activity,
                word: of === null ? activityWord(activity) : `${activityWord(activity)} (${of} on this run)`,
              }))}
            />
            <TextField
              {...entries.text('quantity')}
              kind="number"
              label="How many now"
              hint="Empty means all of the run."
            />
            <TextArea {...entries.text('note')} label="Note" need="optional" rows={2} />
            <Button kind="lead">Report it</Button>
          </RunForm>
        </details>
      )}
    </Part>
  );
}
