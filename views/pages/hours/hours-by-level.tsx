import type { JSX } from 'preact';
import { Part } from '../../components/part.tsx';
import { HoursCells, type HoursInPlaces } from './hours-cells.tsx';
import { ByActivity, ByLevel } from './hours-sums.tsx';
import type { Place } from './place.ts';

export interface HoursByLevelProps extends Omit<HoursInPlaces, 'places'> {
  readonly levels: readonly { readonly id: string; readonly name: string }[];
}

/** With more levels than this a table of all would be wider than anybody reads, and heavy: each level has one of its own. */
const SIDE_BY_SIDE = 8;

/** Activity by level; each figure opens to what it was added up from, and leads on to its lines. */
export function HoursByLevel(props: HoursByLevelProps): JSX.Element {
  const { labour, levels, place } = props;
  if (place !== null)
    return (
      <Part title={`Hours of ${place.name}`} id="by-level">
        <p>
          <a href={`/jobs/${props.jobId}/hours`}>All levels</a>
        </p>
        <div class="columns">
          <HoursCells {...props} places={[place]} />
        </div>
      </Part>
    );
  const places: Place[] = [
    ...levels,
    ...(labour.lines.some((line) => line.level === null) ? [{ id: null, name: 'No level' }] : []),
  ];
  if (levels.length <= SIDE_BY_SIDE)
    return (
      <Part title="By activity and level" id="by-level">
        <HoursCells {...props} places={places} />
      </Part>
    );
  return (
    <Part title="By activity and level" id="by-level">
      <div class="columns">
        <ByActivity {...props} />
        <ByLevel {...props} places={places} />
      </div>
    </Part>
  );
}
