import type { JSX } from 'preact';
import type { CrewSchedule, TimedPlan } from '../../src/domain/schedule/plan-crews.ts';
import { formatHours } from '../../src/domain/units/quantities.ts';
import { ButtonLink } from '../components/button.tsx';
import { DataTable } from '../components/data-table.tsx';
import { DefinitionList } from '../components/definition-list.tsx';
import { Drawing } from '../components/drawing.tsx';
import { EmptyState } from '../components/empty-state.tsx';
import { InventedNotice } from '../components/invented-notice.tsx';
import { Notice } from '../components/notice.tsx';
import { Part } from '../components/part.tsx';
import { FlowChart } from '../drawings/flow-chart.tsx';
import { activityWord } from '../words/activities.ts';
import { CrewForm, type CrewFormProps } from './crews/crew-form.tsx';
import { LookAhead } from './crews/look-ahead.tsx';

export interface CrewsPageProps {
  readonly schedule: CrewSchedule | null;
  readonly saved: boolean;
  /** Version of the labour book that the hours come from; null without one. */
  readonly book: string | null;
  readonly today: string;
  /** null for who may not change it. */
  readonly form: CrewFormProps | null;
}

/** Crews over levels: both ways of working, what each costs in days, the next three weeks, and the plan itself. */
export function CrewsPage({ schedule, saved, book, today, form }: CrewsPageProps): JSX.Element {
  // Who is sent back to the form wants it before the plans that it did not change.
  const isSentBack = form !== null && (form.conflicts !== null || form.summary.length > 0);
  return (
    <>
      {isSentBack && <CrewForm {...form} />}
      {schedule === null ? (
        <EmptyState
          text={
            saved
              ? 'No hours are worked yet: the job needs a labour book and a run whose sections can be laid.'
              : 'The job is not manned yet. The entries below are a suggestion: check them and save.'
          }
        />
      ) : (
        <>
          <InventedNotice version={book} />
          <Schedule schedule={schedule} today={today} />
        </>
      )}
      {form !== null && !isSentBack && <CrewForm {...form} />}
    </>
  );
}

/** At the head of the page. */
export function CrewsTools({ jobId }: { jobId: string }): JSX.Element {
  return <ButtonLink href={`/jobs/${jobId}/look-ahead.pdf`}>Three weeks ahead, PDF</ButtonLink>;
}

function Schedule({ schedule, today }: { schedule: CrewSchedule; today: string }) {
  const { continuous, earliest, unplaced } = schedule;
  return (
    <>
      {unplaced.length > 0 && <Notice kind="note" text={sayUnplaced(unplaced)} />}
      <Way
        title="No crew stands"
        id="steady"
        plan={continuous}
        schedule={schedule}
        say="Each crew starts late enough to go from level to level without a wait."
      />
      <Way
        title="As soon as possible"
        id="early"
        plan={earliest}
        schedule={schedule}
        say="Each crew starts a level as soon as the one before has left it; some stand between levels."
      />
      <LookAhead schedule={schedule} today={today} />
      <p class="soft">
        From labour hours, heads and hours a day. Deliveries, hoist, witnesses and other trades are not in it: the
        foreman’s plan stands above this one.
      </p>
    </>
  );
}

function Way(props: { title: string; id: string; plan: TimedPlan; schedule: CrewSchedule; say: string }) {
  const { title, id, plan, schedule, say } = props;
  const { dates, levels } = schedule;
  const dayWord = (day: number) => dates[day] ?? '';
  return (
    <Part title={title} id={id}>
      <p class="soft">{say}</p>
      <DefinitionList
        entries={[
          { term: 'Finish', value: `${dayWord(plan.finish - 1)}, after ${plan.finish} working days` },
          { term: 'Days that crews stand', value: String(plan.idle) },
          { term: 'Most heads at once', value: String(plan.peakHeads) },
          { term: 'Most lifts at once', value: sayLifts(plan.peakLifts) },
        ]}
      />
      <Drawing label={`${title}: crews over levels`}>
        <FlowChart plan={plan} levels={levels.map(({ name }) => name)} dates={dates} of={title} ink="screen" />
      </Drawing>
      <DataTable
        caption="Crews"
        rows={plan.crews.map((crew, index) => ({ ...crew, index }))}
        keyOf={(crew) => String(crew.index)}
        columns={[
          { head: 'Crew', kind: 'name', cell: (crew) => `${crew.index + 1} ${crew.name}` },
          {
            head: 'Labour hours',
            kind: 'number',
            cell: (crew) => formatHours(schedule.hours[crew.index]!.reduce((sum, hours) => sum + hours, 0)),
          },
          {
            head: 'Days on each level',
            cell: (crew) => sayDays(schedule.days[crew.index]!),
          },
          { head: 'From', cell: (crew) => dayWord(crew.stays[0]?.start ?? 0) },
          { head: 'To', cell: (crew) => dayWord((crew.stays.at(-1)?.finish ?? 1) - 1) },
          { head: 'Stands', kind: 'number', cell: (crew) => `${crew.idle} d` },
        ]}
      />
      <details>
        <summary>Hours, heads and lifts by week</summary>
        <DataTable
          caption={`By week: ${title.toLowerCase()}`}
          rows={plan.weeks}
          keyOf={(week) => week.from}
          columns={[
            { head: 'Week of', kind: 'name', cell: (week) => week.from },
            { head: 'Labour hours', kind: 'number', cell: (week) => formatHours(week.labourHours) },
            { head: 'Paid hours', kind: 'number', cell: (week) => formatHours(week.paidHours) },
            { head: 'Most heads', kind: 'number', cell: (week) => String(week.peakHeads) },
            { head: 'Most lifts', kind: 'number', cell: (week) => sayLifts(week.peakLifts) },
          ]}
        />
      </details>
    </Part>
  );
}

/** More levels than this are told by their least and most. */
const LEVELS_NAMED = 12;

function sayDays(days: readonly number[]): string {
  if (days.length <= LEVELS_NAMED) return days.join(', ');
  const worked = days.filter((each) => each > 0);
  const sum = days.reduce((total, each) => total + each, 0);
  return `${Math.min(...worked)} to ${Math.max(...worked)} on ${worked.length} levels, ${sum} in all`;
}

function sayLifts(lifts: number | null): string {
  return lifts === null ? 'not stated' : String(lifts);
}

function sayUnplaced(unplaced: CrewSchedule['unplaced']): string {
  const total = unplaced.reduce((sum, { hours }) => sum + hours, 0);
  const named = unplaced.slice(0, 4).map(({ activity, hours }) => `${activityWord(activity)} ${formatHours(hours)}`);
  const more = unplaced.length > 4 ? ` and ${unplaced.length - 4} more` : '';
  return `${formatHours(total)} of the job are in neither plan, because no crew has them or they belong to no level: ${named.join(', ')}${more}.`;
}
