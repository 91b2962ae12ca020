import type { JSX } from 'preact';
import type { CrewSchedule } from '../../../src/domain/schedule/plan-crews.ts';
import { DataTable } from '../../components/data-table.tsx';
import { Part } from '../../components/part.tsx';

const DAYS = 21;
const DAY_MS = 86_400_000;

/** Who is where in the three weeks from today (or from the first day, where that is later), crews not standing. */
export function LookAhead({ schedule, today }: { schedule: CrewSchedule; today: string }): JSX.Element {
  const first = schedule.dates[0] ?? today;
  const from = today > first ? today : first;
  const to = new Date(Date.parse(from) + DAYS * DAY_MS).toISOString().slice(0, 10);
  const days = schedule.dates.map((date, day) => ({ date, day })).filter(({ date }) => date >= from && date < to);
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
          ...schedule.continuous.crews.map(({ name, stays }) => ({
            head: name,
            cell: ({ day }: { day: number }) => {
              const level = stays.findIndex(({ start, finish }) => start <= day && day < finish);
              return level < 0 ? <span class="soft">–</span> : (schedule.levels[level]?.name ?? '');
            },
          })),
        ]}
      />
    </Part>
  );
}
