import type { JSX } from 'preact';
import { ButtonLink } from './button.tsx';
import { DataTable } from './data-table.tsx';
import { Notice } from './notice.tsx';

export interface Conflict {
  /** Path of the entry. */
  readonly field: string;
  readonly mine: string;
  readonly theirs: string;
}

/** Somebody saved first: both values side by side, before either is lost. */
export function ConflictList({
  conflicts,
  theirsHref,
  wordOf,
  merged = false,
}: {
  readonly conflicts: readonly Conflict[];
  readonly theirsHref: string;
  /** What the form calls an entry. */
  readonly wordOf: (field: string) => string;
  /** What only they changed stands in the form already. */
  readonly merged?: boolean;
}): JSX.Element {
  return (
    <div class="stack">
      <Notice
        kind="stop"
        text="Somebody changed this while you did. Nothing of yours is written yet, and nothing of it is lost."
      />
      <DataTable
        caption={conflicts.length === 0 ? 'No entry was changed by both' : 'Entries that both of you changed'}
        rows={conflicts}
        keyOf={(conflict) => conflict.field}
        none={
          <p>
            You changed different entries: theirs are taken into the form below beside yours. Read it once more and
            save.
          </p>
        }
        columns={[
          { head: 'Entry', kind: 'name', cell: ({ field }) => <a href={`#${idOf(field)}`}>{wordOf(field)}</a> },
          { head: 'Yours', cell: ({ mine }) => <Said text={mine} /> },
          { head: 'Theirs, in the record now', cell: ({ theirs }) => <Said text={theirs} /> },
        ]}
      />
      <p class="row">
        <span>
          {merged
            ? 'The form below holds yours, and theirs where only they changed. Save it as it stands, or'
            : 'The form below holds yours. Save it to keep yours, or'}
        </span>
        <ButtonLink href={theirsHref}>Take theirs</ButtonLink>
      </p>
    </div>
  );
}

function Said({ text }: { text: string }) {
  if (text === '') return <span class="soft">nothing</span>;
  return text.includes('\n') ? <pre class="sheet-text">{text}</pre> : <span>{text}</span>;
}

function idOf(field: string): string {
  return `f-${field.replace(/[^A-Za-z0-9_-]/g, '-')}`;
}
