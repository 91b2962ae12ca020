import type { JSX } from 'preact';
import type { Difference } from '../../src/document/compare.ts';
import { DataTable } from './data-table.tsx';
import { EmptyState } from './empty-state.tsx';

const SHOWN = 300;
const CHANGE_WORDS: Readonly<Record<Difference['change'], string>> = {
  added: 'new',
  removed: 'taken away',
  changed: 'changed',
  reordered: 'in another order',
};

/** What differs between two job documents, thing by thing. */
export function DifferenceList({ differences }: { differences: readonly Difference[] }): JSX.Element {
  const rows = differences.slice(0, SHOWN).map((difference, index) => ({ ...difference, index }));
  return (
    <DataTable
      caption={differences.length === 1 ? 'One difference' : `${differences.length} differences`}
      {...(differences.length > SHOWN ? { remark: `the first ${SHOWN} are listed` } : {})}
      rows={rows}
      keyOf={(row) => String(row.index)}
      none={<EmptyState text="Nothing differs: this is the document as it stands." />}
      columns={[
        {
          head: 'Thing',
          kind: 'name',
          cell: ({ noun, id, run }) => `${noun === 'tap' ? 'tap-off' : noun} ${id}${run === null ? '' : ` of ${run}`}`,
        },
        { head: 'Change', cell: ({ change }) => CHANGE_WORDS[change] },
        { head: 'From and to', cell: (row) => <Fields difference={row} /> },
      ]}
    />
  );
}

function Fields({ difference }: { difference: Difference }) {
  if (difference.fields.length === 0) return null;
  return (
    <ul class="plain">
      {difference.fields.slice(0, 20).map((field) => (
        <li key={field.path}>
          {field.path !== '' && <span class="soft">{field.path}: </span>}
          {said(field.before)} → {said(field.after)}
        </li>
      ))}
      {difference.fields.length > 20 && <li class="soft">and {difference.fields.length - 20} more</li>}
    </ul>
  );
}

function said(value: unknown): string {
  if (value === undefined) return 'nothing';
  const text = typeof value === 'string' ? value : JSON.stringify(value);
  return text.length > 120 ? `${text.slice(0, 120)}…` : text;
}
