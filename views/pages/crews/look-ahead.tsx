import type { JSX } from 'preact';
import { type LookAheadDay, lookAhead } from '../../../src/domain/schedule/look-ahead.ts';
import type { CrewSchedule, TimedPlan } from '../../../src/domain/schedule/plan-crews.ts';
import { DataTable } from '../../components/data-table.tsx';
import { Part } from '../../components/part.tsx';

/** Who is where in the three weeks from today (or from the first day, where that is later), in both ways of working. */
export function LookAhead({ schedule, today }: { schedule: CrewSchedule; today: string }): JSX.Element {
  return (
    <Part title="Three weeks from here" id="look-ahead">
      <div class="columns">
        <Ahead schedule={schedule} plan={schedule.continuous} way="no crew standing" today={today} />
        <Ahead schedule={schedule} plan={schedule.earliest} way="as soon as possible" today={today} />
      </div>
    </Part>
  );
}

function Ahead(props: { schedule: CrewSchedule; plan: TimedPlan; way: string; today: string }) {
  const { schedule, plan, way, today } = props;
  const { from, days } = lookAhead(schedule, plan, today);
  return (
    <DataTable
      caption={`From ${from}, ${way}`}
      rows={days}
      keyOf={({ date }) => date}
      narrow="scrolls"
      none={<p>Nothing is planned in these three weeks, {way}.</p>}
      columns={[
        { head: 'Day', kind: 'name', cell: ({ date }) => date },
        ...plan.crews.map(({ name }, crew) => ({
          head: name,
          cell: ({ levels }: LookAheadDay) => levels[crew] ?? <span class="soft">–</span>,
        })),
      ]}
    />
  );
}
