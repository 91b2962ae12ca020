import type { JSX } from 'preact';
import type { ToolLapseView, ToolUse } from '../../src/document/tool-lapse.ts';
import { Button } from '../components/button.tsx';
import { cardHref } from '../components/card-href.ts';
import { DataTable } from '../components/data-table.tsx';
import { EmptyState } from '../components/empty-state.tsx';
import { SelectField, TextField } from '../components/field.tsx';
import { Filter } from '../components/filter.tsx';
import { Form } from '../components/form.tsx';
import { Part } from '../components/part.tsx';
import { Time } from '../components/time.tsx';
import { kindWord } from '../words/quality/record-words.ts';

export interface ToolsPageProps {
  readonly jobId: string;
  readonly path: string;
  readonly zone: string | undefined;
  readonly mayInspect: boolean;
  readonly uses: readonly ToolUse[];
  readonly asked: { readonly tool: string; readonly lastGood: string };
  readonly fault: string | null;
  readonly preview: ToolLapseView | null;
  readonly cause: string;
  readonly causeFault: string | undefined;
  readonly csrf: string;
  readonly submissionId: string;
}

/** The tools that the records name, and what hangs on one that was not good. */
export function ToolsPage(props: ToolsPageProps): JSX.Element {
  const { uses, zone, path, asked, fault, preview } = props;
  return (
    <>
      <DataTable
        caption="In the records of this job"
        rows={uses}
        keyOf={(use) => use.tool}
        none={<EmptyState text="No record names a torque tool or an instrument yet." />}
        columns={[
          { head: 'Tool', kind: 'name', cell: (use) => use.tool },
          { head: 'Entries', kind: 'number', cell: (use) => use.entries },
          { head: 'First used', cell: (use) => <Time at={new Date(use.first)} zone={zone} /> },
          { head: 'Last used', cell: (use) => <Time at={new Date(use.last)} zone={zone} /> },
          { head: 'Calibration due', cell: (use) => use.calibrationDue.map((day) => day ?? 'not known').join(', ') },
        ]}
      />
      {uses.length > 0 && (
        <Part title="Found out of calibration" id="lapse">
          <p>
            What was done with a tool after the last day on which it is known to have been good rests on nothing: joints
            reopen at the torque, insulation tests count no longer. The records stay.
          </p>
          <Filter action={path} clear={preview === null ? null : path} label="Which tool">
            <SelectField
              name="tool"
              label="Tool"
              value={asked.tool}
              options={uses.map((use) => ({ value: use.tool, word: use.tool }))}
            />
            <TextField
              name="lastGood"
              label="Last known good on"
              kind="date"
              value={asked.lastGood}
              {...(fault === null ? {} : { fault })}
            />
          </Filter>
          {preview !== null && <Lapse {...props} preview={preview} />}
        </Part>
      )}
    </>
  );
}

const BECOMES = {
  reopens: 'reopens',
  'open-already': 'nothing rests on it any more',
  'left-the-design': 'has left the design',
} as const;

function Lapse(props: ToolsPageProps & { readonly preview: ToolLapseView }) {
  const { jobId, zone, preview, path, csrf, submissionId, cause, causeFault, mayInspect } = props;
  const { tool, lastGood, entries, joints, tests } = preview;
  const isIdle = joints + tests === 0;
  return (
    <>
      <DataTable
        caption={`With ${tool} after ${lastGood}`}
        remark={`${entries.length} ${entries.length === 1 ? 'entry' : 'entries'}`}
        rows={entries}
        keyOf={(entry) => entry.recordId}
        none={<EmptyState text={`Nothing was recorded with ${tool} after ${lastGood}.`} />}
        columns={[
          {
            head: 'On',
            kind: 'name',
            cell: (entry) =>
              entry.subject === 'joint' ? (
                <a href={cardHref(jobId, 'joint', entry.subjectId)}>{entry.mark}</a>
              ) : (
                <a href={`/jobs/${jobId}/runs/${entry.subjectId}/insulation`}>{entry.mark}</a>
              ),
          },
          {
            head: 'What',
            cell: (entry) => <a href={`/jobs/${jobId}/inspections/${entry.recordId}`}>{kindWord(entry.kind)}</a>,
          },
          { head: 'Done', cell: (entry) => <Time at={new Date(entry.at)} zone={zone} /> },
          { head: 'By', cell: (entry) => entry.by },
          { head: 'Now', cell: (entry) => BECOMES[entry.becomes] },
        ]}
      />
      {!isIdle && !mayInspect && <p>An inspector reopens them.</p>}
      {!isIdle && mayInspect && (
        <Form action={path} csrf={csrf} submissionId={submissionId}>
          <input type="hidden" name="tool" value={tool} />
          <input type="hidden" name="lastGood" value={lastGood} />
          <TextField
            name="cause"
            label="How it was found out"
            value={cause}
            {...(causeFault === undefined ? {} : { fault: causeFault })}
          />
          <Button kind="stops">{`Reopen ${words(joints, tests)}`}</Button>
        </Form>
      )}
    </>
  );
}

function words(joints: number, tests: number): string {
  return [
    ...(joints === 0 ? [] : [joints === 1 ? 'one joint' : `${joints} joints`]),
    ...(tests === 0 ? [] : [tests === 1 ? 'one insulation test' : `${tests} insulation tests`]),
  ].join(' and ');
}
