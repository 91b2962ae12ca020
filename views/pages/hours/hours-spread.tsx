import type { JSX } from 'preact';
import type { Bar } from '../../../src/domain/labour/histogram.ts';
import type { Activity, LabourRange } from '../../../src/domain/labour/result.ts';
import { formatHours } from '../../../src/domain/units/quantities.ts';
import { DataTable } from '../../components/data-table.tsx';
import { Drawing } from '../../components/drawing.tsx';
import { Part } from '../../components/part.tsx';
import { HistogramChart } from '../../drawings/histogram-chart.tsx';
import { activityWord } from '../../words/activities.ts';

export interface HoursSpreadProps {
  readonly range: LabourRange;
  readonly bars: readonly Bar[];
  readonly drivers: readonly { readonly activity: Activity; readonly share: number }[];
}

const SHOWN = 8;
/** Fits a phone as it is. */
const PHONE = 366;

/** How the trials came out, and what makes them differ. */
export function HoursSpread({ range, bars, drivers }: HoursSpreadProps): JSX.Element | null {
  if (range.sd === 0) return null;
  return (
    <Part title="What drives the range" id="spread">
      <div class="columns">
        <Drawing label="How often each total came out">
          <HistogramChart
            bars={bars}
            marks={[
              { word: 'P10', at: range.p10 },
              { word: 'P50', at: range.p50 },
              { word: 'P80', at: range.p80 },
              { word: 'P90', at: range.p90 },
            ]}
            of="trials of the hours"
            write={formatHours}
            ink="screen"
            width={PHONE}
          />
        </Drawing>
        <DataTable
          caption="Share of each activity in the spread"
          {...(drivers.length > SHOWN ? { remark: `the first ${SHOWN} of ${drivers.length}` } : {})}
          rows={drivers.slice(0, SHOWN)}
          keyOf={({ activity }) => activity}
          narrow="scrolls"
          columns={[
            { head: 'Activity', kind: 'name', cell: ({ activity }) => activityWord(activity) },
            { head: 'Share of the variance', kind: 'number', cell: ({ share }) => `${(share * 100).toFixed(1)} %` },
          ]}
        />
      </div>
    </Part>
  );
}
