import type { JSX } from 'preact';
import { type LookAheadDay, lookAhead } from '../../../src/domain/schedule/look-ahead.ts';
import type { CrewSchedule } from '../../../src/domain/schedule/plan-crews.ts';
import { DataTable } from '../../components/data-table.tsx';
import { Part } from '../../components/part.tsx';

/** Who is where in the three weeks from today (or from the first day, where that is later), crews not standing. */
export function LookAhead({ schedule, today }: { schedule: CrewSchedule; today: string }): JSX.Element {
  const { from, days } = lookAhead(schedule, schedule.continuous, today);
  return (
    <Part title="Three weeks from here" id="look-ahead">
      <DataTable
        caption={`From ${from}, no crew standing`}
        rows={days}
        keyOf={({ date }) => date}
        narrow="scrolls"
        none={<p>Nothing is planned in these three weeks.</p>}
        columns={[
          { head: 'Day', kind: 'name', cell: ({ date }) => date },
          ...schedule.continuous.crews.map(({ name }, crew) => ({
            head: name,
            cell: ({ levels }: LookAheadDay) => levels[crew] ?? <span class="soft">–</span>,
          })),
        ]}
      />
    </Part>
  );
}
