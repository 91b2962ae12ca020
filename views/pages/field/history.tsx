import type { JSX } from 'preact';
import { STAYS_SAID } from '../../../src/domain/quality/guard-record.ts';
import type { SiteRecord } from '../../../src/domain/quality/record.ts';
import { Button } from '../../components/button.tsx';
import { TextField } from '../../components/field.tsx';
import { Form } from '../../components/form.tsx';
import { Time } from '../../components/time.tsx';
import type { Speech } from '../../words/quality.ts';
import { recordSummary } from '../../words/record-summary.ts';
import { entriesOf, type FieldTrouble } from './entries.ts';

export interface HistoryProps {
  readonly say: Speech;
  readonly records: readonly SiteRecord[];
  readonly action: string;
  readonly csrf: string;
  readonly freshId: string;
  readonly version: number;
  readonly viewer: { readonly id: string; readonly mayInstall: boolean; readonly mayAccept: boolean };
  readonly trouble: FieldTrouble | null;
  /** "Joint J03": names what is kept on the phone. */
  readonly label: string;
  /** Where a record of this kind is entered anew; null where it can only be taken back. */
  readonly correctHref: (recordId: string, kind: SiteRecord['body']['kind']) => string | null;
}

/** Every record of one thing, the newest first. Nothing is ever deleted: what was replaced says by whom and why. */
export function History(props: HistoryProps): JSX.Element | null {
  const { records, trouble } = props;
  if (records.length === 0) return null;
  const newest = [...records].reverse(); // they come in the order of the book
  const replacedBy = new Map(records.flatMap((record) => (record.supersedes ? [[record.supersedes.id, record]] : [])));
  return (
    <details class="part" id="history" open={trouble?.form.startsWith('withdraw')}>
      <summary>
        <h2>History, {records.length === 1 ? 'one record' : `${records.length} records`}</h2>
      </summary>
      <ul class="history">
        {newest.map((record) => (
          <Entry key={record.id} {...props} record={record} replacedBy={replacedBy.get(record.id) ?? null} />
        ))}
      </ul>
    </details>
  );
}

function Entry(props: HistoryProps & { readonly record: SiteRecord; readonly replacedBy: SiteRecord | null }) {
  const { record, replacedBy, say, viewer } = props;
  const isOpen = replacedBy === null && record.body.kind !== 'record-withdrawn' && !STAYS_SAID.has(record.body.kind);
  const mayCorrect = isOpen && (viewer.mayInstall || viewer.mayAccept);
  return (
    <li>
      <div class="hint">
        <Time at={new Date(record.at)} zone={say.zone} />, {record.by.name}
      </div>
      <div>
        {recordSummary(record.body, say)}
        {record.outcome !== null && record.outcome !== 'credited' && (
          <strong> {record.outcome.replace('-', ' ')}</strong>
        )}
      </div>
      {record.supersedes !== null && <div>replaces an earlier record: “{record.supersedes.cause}”</div>}
      {replacedBy !== null && (
        <div>
          <strong>{replacedBy.body.kind === 'record-withdrawn' ? 'taken back' : 'replaced'}</strong> by{' '}
          {replacedBy.by.name}, <Time at={new Date(replacedBy.recordedAt)} zone={say.zone} />
        </div>
      )}
      {mayCorrect && <Correct {...props} />}
    </li>
  );
}

function Correct(props: HistoryProps & { readonly record: SiteRecord }) {
  const { record, action, csrf, freshId, version, trouble, label, correctHref } = props;
  const form = `withdraw-${record.id.slice(-8)}`;
  const entries = entriesOf(trouble, form, freshId);
  const anew = correctHref(record.id, record.body.kind);
  return (
    <details open={trouble?.form === form}>
      <summary>Wrong record?</summary>
      <div class="stack">
        {anew !== null && (
          <p>
            <a href={anew}>Enter it anew; this one then counts as replaced</a>
          </p>
        )}
        <Form
          action={action}
          csrf={csrf}
          submissionId={entries.submissionId}
          version={version}
          keep={{ label: `${label}, record taken back` }}
        >
          <input type="hidden" name="do" value="withdraw" />
          <input type="hidden" name="form" value={form} />
          <input type="hidden" name="supersedes" value={record.id} />
          <TextField {...entries.text('cause')} label="Why it should not have been made" need="required" />
          <Button kind="stops">Take this record back</Button>
        </Form>
      </div>
    </details>
  );
}
