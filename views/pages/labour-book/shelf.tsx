import type { JSX } from 'preact';
import { Button, ButtonLink } from '../../components/button.tsx';
import { DataTable } from '../../components/data-table.tsx';
import { EmptyState } from '../../components/empty-state.tsx';
import { FaultList } from '../../components/fault-list.tsx';
import { type Entered, type FaultOf, faultProps } from '../../components/fault-of.ts';
import { FileField, TextArea, TextField } from '../../components/field.tsx';
import { Form } from '../../components/form.tsx';
import { InventedNotice } from '../../components/invented-notice.tsx';
import { Pager, type PagerProps } from '../../components/pager.tsx';
import { Part } from '../../components/part.tsx';
import { Time } from '../../components/time.tsx';
import type { ListFault } from '../lists.tsx';

export interface ShelfPageProps {
  readonly jobId: string;
  readonly csrf: string;
  readonly submissionId: string;
  readonly zone: string | null;
  /** Version of the job's own book; null without one. */
  readonly own: string | null;
  readonly books: readonly {
    readonly id: string;
    readonly name: string;
    readonly version: string;
    readonly note: string;
    readonly madeBy: string;
    readonly madeAt: string;
    readonly inThisJob: boolean;
  }[];
  readonly pager: PagerProps | null;
  readonly entered: Entered;
  readonly faultOf: FaultOf;
  readonly sheet: { readonly text: string; readonly faults: readonly ListFault[] };
}

/** The company's labour books, the one that this job works with, and the sheet by which a book goes out and in. */
export function ShelfPage(props: ShelfPageProps): JSX.Element {
  const { jobId, own, books, pager, zone } = props;
  const base = `/jobs/${jobId}/labour-book`;
  const pinned = books.find((book) => book.inThisJob);
  return (
    <>
      <InventedNotice version={own} />
      <p>{ownWords(own, pinned)}</p>
      <Part title="On the shelf" id="shelf">
        <DataTable
          caption="Labour books of the company"
          remark="kept whole; nothing changes them later"
          rows={books}
          keyOf={({ id }) => id}
          none={
            <EmptyState text="No book is on the shelf yet. Keep this job’s book below, and other jobs can take it." />
          }
          columns={[
            { head: 'Book', kind: 'name', cell: ({ name, version }) => `${name} ${version}` },
            { head: 'Kept', cell: ({ madeAt }) => <Time at={new Date(madeAt)} zone={zone} show="date" /> },
            { head: 'By', cell: ({ madeBy }) => madeBy },
            { head: 'Note', cell: ({ note }) => note },
            {
              head: 'This job',
              cell: ({ id, inThisJob, name, version }) =>
                inThisJob ? (
                  'works with it'
                ) : (
                  <a href={`${base}/shelf/${id}`}>
                    See what changes
                    <span class="unseen">
                      {' '}
                      with {name} {version}
                    </span>
                  </a>
                ),
            },
          ]}
        />
        {pager !== null && <Pager {...pager} />}
        <p>
          <a href={`${base}/shelf/shipped`}>The invented book that comes with the program</a>: nobody’s hours, to look
          around with and to write your own over.
        </p>
      </Part>
      {own !== null && <Keep {...props} base={base} own={own} />}
      <Sheet {...props} base={base} />
    </>
  );
}

function ownWords(own: string | null, pinned: ShelfPageProps['books'][number] | undefined): string {
  if (own === null)
    return 'This job has no labour book yet: take one from the shelf, bring a sheet, or start from the invented one.';
  if (pinned !== undefined) return `This job works with ${pinned.name} ${pinned.version}, as it stands on the shelf.`;
  return `This job works with version ${own} of its own: no book on the shelf listed here says the same.`;
}

function Keep({ base, csrf, submissionId, own, entered, faultOf }: ShelfPageProps & { base: string; own: string }) {
  const entry = (name: string) => ({ name, value: entered[name] ?? '', ...faultProps(faultOf, name) });
  return (
    <Part title="Keep this job’s book" id="keep">
      <Form action={`${base}/shelf`} csrf={csrf} submissionId={submissionId}>
        <div class="fields">
          <TextField {...entry('name')} label="What the company calls it" need="required" hint="As Shop hours." />
          <TextField
            {...entry('version')}
            value={entered.version ?? own}
            label="Version"
            need="required"
            hint="Another one than the job’s is written into the job as well."
          />
        </div>
        <TextArea
          {...entry('note')}
          label="What changed, and from which jobs it was learned"
          need="optional"
          rows={2}
        />
        <Button>Keep it on the shelf</Button>
      </Form>
    </Part>
  );
}

function Sheet({ base, csrf, own, sheet }: ShelfPageProps & { readonly base: string }) {
  return (
    <Part
      title="As a sheet"
      id="sheet-in"
      tools={
        own !== null && (
          <>
            <ButtonLink href={`${base}.xlsx`}>Workbook</ButtonLink>
            <ButtonLink href={`${base}.csv`}>CSV</ButtonLink>
          </>
        )
      }
    >
      {sheet.faults.length > 0 && (
        <div class="faults" role="alert" tabIndex={-1}>
          <FaultList
            caption={`${sheet.faults.length === 1 ? 'One cell' : `${sheet.faults.length} cells`} to put right; nothing was changed`}
            faults={sheet.faults.slice(0, 300).map(({ row, column, value, problem, remedy }) => ({
              row: row ?? 0,
              column: column ?? 'the whole',
              value,
              remedy: `${problem} ${remedy}`,
            }))}
          />
        </div>
      )}
      <Form action={`${base}/sheet`} csrf={csrf} withFiles="yes">
        <FileField
          name="file"
          id="f-book-file"
          label="A labour book from a spreadsheet"
          accept=".xlsx,.csv,.tsv,.txt"
          need="optional"
          hint="The workbook or the CSV as they go out above, edited. All of the book: what the sheet does not name is not in it."
        />
        <TextArea
          name="text"
          id="f-book-text"
          label="Or its rows, with their headings"
          kind="sheet"
          rows={sheet.text === '' ? 3 : 16}
          value={sheet.text}
          need="optional"
        />
        <Button>See what it changes</Button>
      </Form>
    </Part>
  );
}
