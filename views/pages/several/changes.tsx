import type { JSX } from 'preact';
import type { BulkDifference } from '../../../src/document/several/plan-bulk.ts';
import type { Finding } from '../../../src/domain/finding.ts';
import type { UnitSystem } from '../../../src/domain/model.ts';
import { Button } from '../../components/button.tsx';
import { DataTable } from '../../components/data-table.tsx';
import type { Option } from '../../components/field.tsx';
import { FindingList } from '../../components/finding-list.tsx';
import { Form } from '../../components/form.tsx';
import { BULK_WORDS, bulkValueWords } from '../../words/bulk-fields.ts';
import { type Carried, CarriedFields } from './carried.tsx';
import { ChangeFields } from './change-fields.tsx';
import { Notes, releasedNote } from './made-preview.tsx';
import { SeveralForm, type SeveralFormProps } from './several-form.tsx';

export interface ChangesPreviewProps {
  readonly action: string;
  readonly csrf: string;
  readonly submissionId: string;
  readonly units: UnitSystem;
  readonly carried: Carried;
  readonly seen: string;
  readonly changed: readonly string[];
  readonly same: number;
  readonly released: readonly string[];
  readonly differences: readonly BulkDifference[];
  readonly appearing: readonly Finding[];
  readonly disappearing: readonly Finding[];
  readonly notes: readonly string[];
}

export interface ChangesPageProps extends SeveralFormProps {
  readonly levels: readonly Option[];
  readonly types: readonly Option[];
  readonly example: string;
  readonly preview: ChangesPreviewProps | null;
}

const SHOWN = 40;
/** More rows than this would make a page that no browser shows quickly. */
const UNFOLDED = 2000;
const FINDINGS = 30;

/** One or several fields of many runs changed together. */
export function ChangesPage(props: ChangesPageProps): JSX.Element {
  const { preview } = props;
  return (
    <SeveralForm
      form={props}
      preview={preview === null ? null : <ChangesPreview {...preview} />}
      ask="Show what would change"
    >
      <ChangeFields {...props} />
    </SeveralForm>
  );
}

function ChangesPreview(props: ChangesPreviewProps) {
  const { changed, same, differences, units, released, notes, appearing, disappearing } = props;
  const count = changed.length === 1 ? 'One run' : `${changed.length} runs`;
  const [first, rest] = [differences.slice(0, SHOWN), differences.slice(SHOWN)];
  const kept = same === 0 ? [] : [`${same === 1 ? 'One run has' : `${same} runs have`} all of it already.`];
  return (
    <section class="preview stack" id="preview" aria-label="What will change">
      <Differences
        caption={changed.length === 0 ? 'No run would change' : `${count} will change`}
        rows={first}
        units={units}
      />
      {rest.length > 0 && (
        <details>
          <summary>The other {differences.length - first.length} entries</summary>
          <Differences caption="Other entries" rows={rest.slice(0, UNFOLDED)} units={units} />
          {rest.length > UNFOLDED && <p class="soft">And {rest.length - UNFOLDED} more, of the same kind.</p>}
        </details>
      )}
      <Findings caption="would appear" findings={appearing} units={units} />
      <Findings caption="would go" findings={disappearing} units={units} />
      {appearing.length + disappearing.length === 0 && changed.length > 0 && (
        <p>No finding of the layout would appear or go.</p>
      )}
      <Notes notes={[...kept, ...notes, ...releasedNote(released)]} />
      {changed.length > 0 && <Apply {...props} count={changed.length} />}
    </section>
  );
}

function Differences({
  caption,
  rows,
  units,
}: {
  caption: string;
  rows: readonly BulkDifference[];
  units: UnitSystem;
}) {
  return (
    <DataTable
      caption={caption}
      rows={rows}
      keyOf={(one) => `${one.run} ${one.field}`}
      none={<p>No run would change: all of them have it already.</p>}
      columns={[
        { head: 'Run', kind: 'name', cell: (one) => one.run },
        { head: 'Entry', cell: (one) => BULK_WORDS[one.field] },
        { head: 'As it is', cell: (one) => bulkValueWords(one.field, one.from, units) },
        { head: 'As it would be', cell: (one) => bulkValueWords(one.field, one.to, units) },
      ]}
    />
  );
}

function Apply({ action, csrf, submissionId, carried, seen, count }: ChangesPreviewProps & { count: number }) {
  return (
    <Form action={action} csrf={csrf} submissionId={submissionId}>
      <CarriedFields {...carried} />
      <input type="hidden" name="seen" value={seen} />
      <Button kind="lead">{count === 1 ? 'Change one run' : `Change ${count} runs`}</Button>
    </Form>
  );
}

function Findings({ caption, findings, units }: { caption: string; findings: readonly Finding[]; units: UnitSystem }) {
  if (findings.length === 0) return null;
  const stops = findings.filter(({ severity }) => severity === 'stop').length;
  const count = findings.length === 1 ? 'One finding' : `${findings.length} findings`;
  const first = findings.slice(0, FINDINGS);
  return (
    <details open={findings.length <= 6}>
      <summary>
        {count} {caption}
        {stopWords(stops, findings.length)}
      </summary>
      <FindingList findings={first} units={units} />
      {first.length < findings.length && <p class="soft">And {findings.length - first.length} more.</p>}
    </details>
  );
}

function stopWords(stops: number, all: number): string {
  if (stops === 0) return '';
  if (stops === all) return all === 1 ? ', a stop' : ', all of them stops';
  return stops === 1 ? ', one of them a stop' : `, ${stops} of them stops`;
}
