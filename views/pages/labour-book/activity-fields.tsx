// biome-ignore-all lint/a11y/noRedundantRoles: once CSS stacks the rows, some browsers forget their roles; said here they stay.
import type { JSX } from 'preact';
import { ACTIVITIES, type Activity } from '../../../src/domain/labour/result.ts';
import type { Entered, FaultOf } from '../../components/fault-of.ts';
import { Sign } from '../../components/sign.tsx';
import { activityWord } from '../../words/activities.ts';
import { factorWord } from '../../words/factors.ts';
import { labourBookEntryWord } from '../../words/labour-book-entries.ts';

export interface ActivityFieldsProps {
  readonly entered: Entered;
  readonly faultOf: FaultOf;
  readonly units: 'ft-in' | 'metric';
}

const FACTORS = ['height', 'congestion', 'storey', 'live'] as const;
/** Which conditions the hours of an activity feel. */
const SHORT = { height: 'Height', congestion: 'Ceiling', storey: 'Storey', live: 'In service' } as const;
const CELLS = [
  ['unit', 'Unit'],
  ['low', 'Low'],
  ['likely', 'Likely'],
  ['high', 'High'],
  ['bands', 'By rating, length'],
] as const;

/** Base hours of every activity; a row that stays empty is not in the book, and its work has no hours. */
export function ActivityFields({ entered, faultOf, units }: ActivityFieldsProps): JSX.Element {
  const example = units === 'ft-in' ? `5'-0": 0.34 / 0.4 / 0.56` : '1.5 m: 0.34 / 0.4 / 0.56';
  return (
    <div class="table stacks entries roomy">
      <table role="table" aria-describedby="activities-hint">
        <caption>Labour hours of one unit, when all goes well, as a rule, and when it goes badly</caption>
        <thead role="rowgroup">
          <tr role="row">
            {['Activity', ...CELLS.map(([, head]) => head), ...FACTORS.map((factor) => SHORT[factor])].map((head) => (
              <th key={head} scope="col" role="columnheader">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody role="rowgroup">
          {ACTIVITIES.map((activity) => (
            <tr key={activity} role="row">
              <th scope="row" role="rowheader" data-label="Activity">
                <div>{activityWord(activity)}</div>
              </th>
              {CELLS.map(([cell, head]) => (
                <Cell key={cell} name={`activities.${activity}.${cell}`} head={head} of={{ entered, faultOf }} />
              ))}
              {FACTORS.map((factor) => (
                <Tick key={factor} activity={activity} factor={factor} entered={entered} />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <p class="hint" id="activities-hint">
        Labour hours, not crew hours. A row that stays empty is not in the book. By rated current of the busway, length
        of the piece or both, like 250 A: 0.34 / 0.4 / 0.56; {example}; 250 A, {example}, separated by semicolons; the
        last also serves anything greater. The ticks name the conditions that a line feels.
      </p>
    </div>
  );
}

function Cell({ name, head, of }: { name: string; head: string; of: { entered: Entered; faultOf: FaultOf } }) {
  const fault = of.faultOf(name);
  const id = `f-${name.replace(/[^A-Za-z0-9_-]/g, '-')}`;
  const isText = name.endsWith('.unit') || name.endsWith('.bands');
  return (
    <td role="cell" data-label={head}>
      <div>
        <input
          id={id}
          name={name}
          class={isText ? 'box' : 'box num'}
          size={name.endsWith('.bands') ? 48 : undefined}
          type="text"
          inputMode={isText ? undefined : 'decimal'}
          value={of.entered[name] ?? ''}
          autoComplete="off"
          aria-label={labourBookEntryWord(name)}
          aria-invalid={fault === undefined ? undefined : 'true'}
          aria-describedby={fault === undefined ? undefined : `${id}-fault`}
        />
        {fault !== undefined && (
          <div class="fault" id={`${id}-fault`}>
            <Sign of="stop" /> {fault}
          </div>
        )}
      </div>
    </td>
  );
}

function Tick(props: { activity: Activity; factor: (typeof FACTORS)[number]; entered: Entered }) {
  const name = `activities.${props.activity}.factors.${props.factor}`;
  return (
    <td role="cell" data-label={SHORT[props.factor]}>
      <label class="tick">
        <input
          type="checkbox"
          name={name}
          value="yes"
          checked={props.entered[name] === 'yes'}
          aria-label={`${activityWord(props.activity)}: ${factorWord(props.factor)}`}
        />
      </label>
    </td>
  );
}
