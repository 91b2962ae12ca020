import type { JSX } from 'preact';
import { TextField } from '../../components/field.tsx';
import { Part } from '../../components/part.tsx';
import { RowFields } from '../../components/row-fields.tsx';
import { cellWord } from '../../words/run-entries.ts';
import { entryProps, type Filled, rowCount } from './fields.ts';

const SIDES = [
  { value: '', word: 'either side' },
  { value: 'left', word: 'left' },
  { value: 'right', word: 'right' },
];

/** The legs, what they pass, and where no joint may stand. */
export function WayFields(props: Filled & { readonly example: string }): JSX.Element {
  const { entered, faultOf, example } = props;
  return (
    <Part title="Way" id="way">
      <RowFields
        caption="Legs"
        remark="in order from the feed"
        hint={`Centre line to centre line, like ${example}. An empty row is passed over; the last leg has no turn.`}
        group="legs"
        noun="leg"
        rows={rowCount(entered, 'legs', 2)}
        entered={entered}
        faultOf={faultOf}
        fields={[
          { name: 'lengthMm', head: cellWord('lengthMm') },
          {
            name: 'turn',
            head: cellWord('turn'),
            options: [
              { value: 'none', word: 'none' },
              { value: 'left', word: 'left' },
              { value: 'right', word: 'right' },
              { value: 'up', word: 'up' },
              { value: 'down', word: 'down' },
            ],
          },
          { name: 'tapsMustFace', head: cellWord('tapsMustFace'), options: SIDES },
        ]}
      />
      <div class="fields">
        <TextField
          {...entryProps(props, 'end.reachMm')}
          kind="length"
          hint="Measured like the last leg’s length. Without both the last leg is covered exactly."
        />
        <TextField {...entryProps(props, 'end.hardStopMm')} kind="length" />
      </div>
      <RowFields
        caption="Walls and floors that the run passes"
        hint="Each is passed by an unbroken length, with the sheet’s clearance either side of its faces."
        group="crossings"
        noun="crossing"
        rows={rowCount(entered, 'crossings', 1)}
        entered={entered}
        faultOf={faultOf}
        fields={[
          { name: 'atMm', head: cellWord('atMm') },
          { name: 'thicknessMm', head: cellWord('thicknessMm') },
          {
            name: 'kind',
            head: cellWord('kind'),
            options: [
              { value: 'wall', word: 'wall' },
              { value: 'fire-wall', word: 'fire wall' },
              { value: 'floor', word: 'floor' },
            ],
          },
          { name: 'fireRatingMin', head: cellWord('fireRatingMin'), unit: 'min' },
        ]}
      />
      <Zones
        {...props}
        group="noJoint"
        noun="no-joint zone"
        caption="Where no joint may stand"
        hint="As under a light that would close the way to the clamp."
      />
    </Part>
  );
}

export function Zones(
  props: Filled & {
    readonly group: 'noJoint' | 'noSupport';
    readonly noun: string;
    readonly caption: string;
    readonly hint: string;
  },
): JSX.Element {
  const { group, noun, caption, hint, entered, faultOf } = props;
  return (
    <RowFields
      caption={caption}
      hint={hint}
      group={group}
      noun={noun}
      rows={rowCount(entered, group, 1)}
      entered={entered}
      faultOf={faultOf}
      fields={[
        { name: 'fromMm', head: cellWord('fromMm') },
        { name: 'toMm', head: cellWord('toMm') },
        { name: 'reason', head: cellWord('reason'), kind: 'text' },
      ]}
    />
  );
}
