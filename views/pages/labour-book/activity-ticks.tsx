import type { JSX } from 'preact';
import { ACTIVITIES } from '../../../src/domain/labour/result.ts';
import type { Entered } from '../../components/fault-of.ts';
import { activityWord } from '../../words/activities.ts';

export interface ActivityTicksProps {
  /** Fields are named `name.joint`. */
  readonly name: string;
  /** What the ticks are of: "Felt by: night shift". */
  readonly of: string;
  /** What holds while none is ticked. */
  readonly none: string;
  readonly entered: Entered;
}

/** Which activities something is for; it opens on a press, and says when closed what it comes to. */
export function ActivityTicks({ name, of, none, entered }: ActivityTicksProps): JSX.Element {
  const ticked = ACTIVITIES.filter((activity) => entered[`${name}.${activity}`] === 'yes');
  return (
    <details class="pick">
      <summary>
        {of}: {ticked.length === 0 ? none : ticked.map(activityWord).join(', ')}
      </summary>
      <fieldset>
        <legend class="unseen">{of}</legend>
        <div class="fields">
          {ACTIVITIES.map((activity) => (
            <label key={activity} class="tick">
              <input type="checkbox" name={`${name}.${activity}`} value="yes" checked={ticked.includes(activity)} />
              {activityWord(activity)}
            </label>
          ))}
        </div>
      </fieldset>
    </details>
  );
}
