import type { JSX } from 'preact';
import type { UnitSystem } from '../../../src/domain/model.ts';
import { FaultList } from '../../components/fault-list.tsx';
import { TextArea } from '../../components/field.tsx';
import { type RowField, RowFields } from '../../components/row-fields.tsx';
import { cellWord } from '../../words/run-entries.ts';
import type { SheetFault } from '../run-edit.tsx';
import { type Filled, rowCount } from './fields.ts';

export type PasteGroup = 'legs' | 'crossings' | 'noJoint' | 'noSupport';
export type PasteFaults = Readonly<Partial<Record<PasteGroup, readonly SheetFault[]>>>;

export const GROUP_WORDS: Readonly<Record<PasteGroup, string>> = {
  legs: 'Legs',
  crossings: 'Crossings',
  noJoint: 'No-joint zones',
  noSupport: 'No-hanger zones',
};

interface Rows {
  readonly caption: string;
  readonly remark?: string;
  readonly noun: string;
  readonly spare: number;
  readonly hint: (example: string) => string;
  readonly fields: readonly RowField[];
}

const ZONE: readonly RowField[] = [
  { name: 'fromMm', head: cellWord('fromMm') },
  { name: 'toMm', head: cellWord('toMm') },
  { name: 'reason', head: cellWord('reason'), kind: 'text' },
];

const ROWS: Readonly<Record<PasteGroup, Rows>> = {
  legs: {
    caption: 'Legs',
    remark: 'in order from the feed',
    noun: 'leg',
    spare: 2,
    hint: (example) =>
      `Centre line to centre line, like ${example}. An empty row is passed over; the last leg has no turn.`,
    fields: [
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
      {
        name: 'tapsMustFace',
        head: cellWord('tapsMustFace'),
        options: [
          { value: '', word: 'either side' },
          { value: 'left', word: 'left' },
          { value: 'right', word: 'right' },
        ],
      },
    ],
  },
  crossings: {
    caption: 'Walls and floors that the run passes',
    noun: 'crossing',
    spare: 1,
    hint: () => 'Each is passed by an unbroken length, with the sheet’s clearance either side of its faces.',
    fields: [
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
    ],
  },
  noJoint: {
    caption: 'Where no joint may stand',
    noun: 'no-joint zone',
    spare: 1,
    hint: () => 'As under a light that would close the way to the clamp.',
    fields: ZONE,
  },
  noSupport: {
    caption: 'Where no hanger may stand',
    noun: 'no-hanger zone',
    spare: 1,
    hint: () => 'As under a duct or a tendon. A zone wider than the greatest spacing has no legal answer.',
    fields: ZONE,
  },
};

export interface RowsOfProps extends Filled {
  readonly group: PasteGroup;
  readonly pasteFaults: PasteFaults;
  readonly units: UnitSystem;
}

/** The rows of one kind as a grid, and a place for rows of a spreadsheet. */
export function RowsOf({ group, entered, faultOf, pasteFaults, units }: RowsOfProps): JSX.Element {
  const { caption, remark, noun, spare, hint, fields } = ROWS[group];
  const example = units === 'ft-in' ? `12'-6 1/2", 12.5 ft or 3810 mm` : `3810, 3.81 m or 12'-6"`;
  const faults = pasteFaults[group] ?? [];
  const name = `paste.${group}`;
  return (
    <div id={`${group}-rows`} class="stack" data-rows={noun}>
      <RowFields
        caption={caption}
        {...(remark === undefined ? {} : { remark })}
        hint={hint(example)}
        group={group}
        noun={noun}
        rows={rowCount(entered, group, spare)}
        entered={entered}
        faultOf={faultOf}
        fields={fields}
      />
      <details open={faults.length > 0}>
        <summary>Paste {GROUP_WORDS[group].toLowerCase()} from a spreadsheet</summary>
        {faults.length > 0 && (
          <div class="faults">
            <FaultList
              caption={faults.length === 1 ? 'One cell to put right' : `${faults.length} cells to put right`}
              faults={faults.map(({ row, column, value, problem, remedy }) => ({
                row: row ?? 1,
                column: column ?? 'the row',
                value,
                remedy: `${problem} ${remedy}`,
              }))}
            />
          </div>
        )}
        <TextArea
          name={name}
          label={`Rows of ${GROUP_WORDS[group].toLowerCase()}`}
          value={entered[name] ?? ''}
          kind="sheet"
          rows={4}
          hint={`One a row: ${fields.map(({ head }) => head.toLowerCase()).join(', ')}. Headings may stand on top. They take the place of all rows above.`}
        />
        <input type="hidden" name={`${name}.at`} value="" />
      </details>
    </div>
  );
}
