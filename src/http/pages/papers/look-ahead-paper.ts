import { lookAhead } from '../../../domain/schedule/look-ahead.ts';
import type { CrewSchedule } from '../../../domain/schedule/plan-crews.ts';
import type { PaperSheet } from '../../../paper/estimate/paper.ts';

/** Three weeks ahead on paper, a sheet for each way of working: who is on which level, with room to write beside it. */
export function lookAheadSheets(schedule: CrewSchedule, today: string, invented: string): PaperSheet[] {
  const ways = [
    ['No crew stands', schedule.continuous],
    ['As soon as possible', schedule.earliest],
  ] as const;
  return ways.map(([way, plan]) => {
    const { from, days } = lookAhead(schedule, plan, today);
    const share = 62 / Math.max(1, plan.crews.length);
    return {
      title: `Three weeks ahead: ${way.toLowerCase()}`,
      beside: `from ${from}`,
      parts: [
        ...(invented === '' ? [] : [{ kind: 'text' as const, text: invented }]),
        {
          kind: 'table',
          table: {
            title: 'Who is on which level',
            columns: [
              { title: 'Day', share: 13 },
              ...plan.crews.map(({ name }) => ({ title: name, share })),
              { title: 'What stands in the way', share: 25 },
            ],
            rows: days.map(({ date, levels }) => [date, ...levels.map((level) => level ?? '–'), '']),
            none: 'Nothing is planned in these three weeks.',
          },
        },
      ],
    };
  });
}
