import type { JSX } from 'preact';
import type { UnitSystem } from '../../src/domain/model.ts';
import { Button, ButtonLink } from '../components/button.tsx';
import { FaultList } from '../components/fault-list.tsx';
import { FileField, TextArea } from '../components/field.tsx';
import { Form } from '../components/form.tsx';
import { Part } from '../components/part.tsx';
import { ListPreview, type ListPreviewProps } from './lists/list-preview.tsx';

export interface ListFault {
  readonly row: number | null;
  readonly column: string | null;
  readonly value: string;
  readonly problem: string;
  readonly remedy: string;
}

export interface OneListProps {
  readonly of: 'runs' | 'taps';
  readonly text: string;
  readonly faults: readonly ListFault[];
  readonly preview: Omit<ListPreviewProps, 'jobId' | 'csrf' | 'of' | 'text' | 'units'> | null;
}

export interface ListsPageProps {
  readonly jobId: string;
  readonly units: UnitSystem;
  readonly csrf: string;
  readonly mayDesign: boolean;
  /** Headings with whether a list must have them. */
  readonly headings: Readonly<Record<'runs' | 'taps', readonly { readonly name: string; readonly needed: boolean }[]>>;
  readonly lists: readonly OneListProps[];
}

const WORDS = { runs: 'Runs', taps: 'Tap-offs' } as const;
const EXAMPLES = {
  runs: 'run\tlevel\ttype\tconductor side\tleg lengths\tturns\nF1-R1-A\tF1\tmy-type\tleft\t61 ft; 34 ft\tleft',
  taps: 'run\ttap\tat\tphases\tdevice\tload VA\nF1-R1-A\tT01\t1\'-9"\tL1\t30\t2400',
} as const;

/** Runs and tap-offs as they come from a spreadsheet: read, shown, and only then made. */
export function ListsPage(props: ListsPageProps): JSX.Element {
  return (
    <>
      {props.lists.map((list) => (
        <OneList key={list.of} {...list} page={props} />
      ))}
    </>
  );
}

function OneList({ of, text, faults, preview, page }: OneListProps & { readonly page: ListsPageProps }) {
  const { jobId, csrf, mayDesign, headings, units } = page;
  const base = `/jobs/${jobId}/lists/${of}`;
  return (
    <Part
      title={WORDS[of]}
      id={of}
      tools={<ButtonLink href={`${base}.csv`}>The job’s {WORDS[of].toLowerCase()} as CSV</ButtonLink>}
    >
      {faults.length > 0 && <Faults faults={faults} />}
      {preview !== null && <ListPreview {...preview} jobId={jobId} csrf={csrf} of={of} text={text} units={units} />}
      {mayDesign && (
        <Form action={base} csrf={csrf} withFiles="yes">
          <TextArea
            name="text"
            id={`f-text-${of}`}
            label={`Rows of ${WORDS[of].toLowerCase()}, with their headings`}
            kind="sheet"
            rows={text === '' ? 6 : Math.min(24, text.split('\n').length + 2)}
            value={text}
            hint={<Headings of={of} headings={headings[of]} />}
          />
          <FileField
            name="file"
            id={`f-file-${of}`}
            label="Or a file"
            accept=".csv,.tsv,.txt,text/csv,text/tab-separated-values,text/plain"
            need="optional"
            hint="CSV or TSV. It counts when both are given."
          />
          <Button {...(preview === null ? { kind: 'lead' as const } : {})}>Read the list</Button>
        </Form>
      )}
    </Part>
  );
}

function Faults({ faults }: { faults: readonly ListFault[] }) {
  const shown = faults.slice(0, 300);
  const count = faults.length === 1 ? 'One cell' : `${faults.length} cells`;
  return (
    <div class="faults" role="alert" tabIndex={-1}>
      <FaultList
        caption={`${count} to put right; nothing was made${faults.length > shown.length ? `, the first ${shown.length} are listed` : ''}`}
        faults={shown.map(({ row, column, value, problem, remedy }) => ({
          row: row ?? 0,
          column: column ?? 'the whole',
          value,
          remedy: `${problem} ${remedy}`,
        }))}
      />
    </div>
  );
}

function Headings({ of, headings }: { of: 'runs' | 'taps'; headings: ListsPageProps['headings']['runs'] }) {
  return (
    <>
      Headings in any order:{' '}
      {headings.map(({ name, needed }, index) => (
        <>
          {index > 0 && ', '}
          {needed ? <strong>{name}</strong> : name}
        </>
      ))}
      . The bold ones are needed{of === 'taps' ? ', and one of the loads' : '; legs and turns are separated by ;'}.
      <details>
        <summary>An example</summary>
        <pre class="sheet-text">{EXAMPLES[of]}</pre>
      </details>
    </>
  );
}
