// biome-ignore-all lint/a11y/noRedundantRoles: once CSS stacks the rows, some browsers forget their roles; said here they stay.
import type { JSX } from 'preact';
import type { Entered, FaultOf } from './fault-of.ts';
import type { Option } from './field.tsx';
import { Sign } from './sign.tsx';

export interface RowField {
  /** Name within the row. */
  readonly name: string;
  readonly head: string;
  readonly unit?: string;
  readonly options?: readonly Option[];
  readonly kind?: 'text' | 'figure';
}

export interface RowFieldsProps {
  readonly caption: string;
  /** Behind the caption, softer. */
  readonly remark?: string;
  readonly hint: string;
  /** Names of the fields are `group[row].name`. */
  readonly group: string;
  /** What a row is, in the singular: "leg". */
  readonly noun: string;
  readonly fields: readonly RowField[];
  readonly rows: number;
  /** Many columns with words in them: the table takes the width of the sheet. */
  readonly room?: 'roomy';
  readonly entered: Entered;
  readonly faultOf: FaultOf;
}

/** Entries in rows, as in a spreadsheet; the last rows stand empty for more. */
export function RowFields(props: RowFieldsProps): JSX.Element {
  const { caption, remark, hint, group, noun, fields, rows, room } = props;
  return (
    <div class={room === undefined ? 'table stacks entries' : `table stacks entries ${room}`}>
      <table role="table" aria-describedby={`${group}-hint`}>
        <caption>
          {caption}
          {remark !== undefined && <span class="hint"> {remark}</span>}
        </caption>
        <thead role="rowgroup">
          <tr role="row">
            <th scope="col" role="columnheader" class="num">
              No.
            </th>
            {fields.map((field) => (
              <th key={field.name} scope="col" role="columnheader">
                {field.head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody role="rowgroup">
          {Array.from({ length: rows }, (_, row) => (
            <tr key={row} role="row">
              <th scope="row" role="rowheader" class="num" data-label={noun}>
                <div>{row + 1}</div>
              </th>
              {fields.map((field) => (
                <Cell key={field.name} field={field} row={row} of={props} />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <p class="hint" id={`${group}-hint`}>
        {hint}
      </p>
    </div>
  );
}

function Cell({ field, row, of }: { field: RowField; row: number; of: RowFieldsProps }) {
  const name = `${of.group}[${row}].${field.name}`;
  const fault = of.faultOf(name);
  const id = `f-${name.replace(/[^A-Za-z0-9_-]/g, '-')}`;
  const control = {
    id,
    name,
    'aria-label': `${field.head} of ${of.noun} ${row + 1}`,
    'aria-invalid': fault === undefined ? undefined : ('true' as const),
    'aria-describedby': fault === undefined ? undefined : `${id}-fault`,
  };
  const value = of.entered[name] ?? '';
  return (
    <td role="cell" data-label={field.head}>
      <div>
        <div class="entry">
          {field.options === undefined ? (
            <input
              {...control}
              class={field.kind === 'text' ? 'box' : 'box num'}
              type="text"
              value={value}
              autoComplete="off"
            />
          ) : (
            <select {...control} class="box">
              {field.options.map((option) => (
                <option key={option.value} value={option.value} selected={option.value === value}>
                  {option.word}
                </option>
              ))}
            </select>
          )}
          {field.unit !== undefined && <span class="soft">{field.unit}</span>}
        </div>
        {fault !== undefined && (
          <div class="fault" id={`${id}-fault`}>
            <Sign of="stop" /> {fault}
          </div>
        )}
      </div>
    </td>
  );
}
