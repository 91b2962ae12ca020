import type { ComponentChildren, JSX } from 'preact';
import { Mark } from '../../components/mark.tsx';
import type { WorkState } from '../../drawings/states.ts';

export interface ThingRow {
  readonly id: string;
  readonly href: string;
  /** Short: "P03". */
  readonly mark: string;
  readonly what: ComponentChildren;
  readonly state: WorkState;
  readonly word?: string;
}

/** Things of a run as rows that a glove can press, each with its mark, its state in ink and its word. */
export function ThingRows({ rows, label }: { rows: readonly ThingRow[]; label: string }): JSX.Element {
  return (
    <ul class="rows" aria-label={label}>
      {rows.map((row) => (
        <li key={row.id}>
          <a href={row.href}>
            <strong>{row.mark}</strong>
            <span>{row.what}</span>
            <Mark state={row.state} {...(row.word === undefined ? {} : { word: row.word })} />
          </a>
        </li>
      ))}
    </ul>
  );
}
