import type { JSX } from 'preact';
import { DataTable } from '../components/data-table.tsx';
import { EmptyState } from '../components/empty-state.tsx';
import { Notice } from '../components/notice.tsx';
import { Pager, type PagerProps } from '../components/pager.tsx';
import { Time } from '../components/time.tsx';

export interface AuditRow {
  readonly seq: number;
  readonly at: Date;
  readonly userName: string;
  readonly action: string;
  readonly subject: string;
  readonly subjectId: string;
  /** What it was and became, as text; null where it touches money and the reader is not the office. */
  readonly details: string | null;
  readonly hash: string;
}

export interface AuditPageProps {
  readonly entries: readonly AuditRow[];
  readonly total: number;
  /** Entry where the chain first fails; null when it holds. */
  readonly firstBreak: number | null;
  readonly pager: PagerProps;
  readonly zone: string | undefined;
}

/** Who changed what and when, newest first, and whether the chain of hashes holds. */
export function AuditPage({ entries, total, firstBreak, pager, zone }: AuditPageProps): JSX.Element {
  return (
    <>
      {firstBreak === null ? (
        <Notice
          kind="done"
          text={`The chain holds: each of its ${total} entries carries the hash of the one before it.`}
        />
      ) : (
        <Notice
          kind="stop"
          text={`The chain fails at entry ${firstBreak}: it or an entry before it was altered or taken away. Compare with a back-up, and tell an administrator.`}
        />
      )}
      <DataTable
        caption="Entries"
        remark={`${pager.first} to ${pager.last} of ${total}, newest first`}
        rows={entries}
        keyOf={(entry) => String(entry.seq)}
        none={<EmptyState text="Nothing stands here." />}
        columns={[
          { head: 'No.', kind: 'number', cell: (entry) => entry.seq },
          { head: 'When', cell: (entry) => <Time at={entry.at} zone={zone} /> },
          { head: 'Who', cell: (entry) => entry.userName },
          { head: 'What was done', kind: 'name', cell: (entry) => entry.action },
          { head: 'Was and became', cell: (entry) => <Details entry={entry} /> },
          { head: 'Hash', cell: (entry) => <code title={entry.hash}>{entry.hash.slice(0, 12)}</code> },
        ]}
      />
      {(pager.before !== null || pager.after !== null) && <Pager {...pager} />}
    </>
  );
}

function Details({ entry }: { entry: AuditRow }) {
  if (entry.details === null) return <span class="soft">prices or rates: shown to the office</span>;
  if (entry.details === '') return null;
  return (
    <details>
      <summary>
        Show<span class="unseen"> what entry {entry.seq} was and became</span>
      </summary>
      <pre class="sheet-text">{entry.details}</pre>
    </details>
  );
}
