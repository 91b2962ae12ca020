import type { JSX } from 'preact';
import { Button } from './button.tsx';
import { TextField } from './field.tsx';
import { Form } from './form.tsx';
import { Part } from './part.tsx';

export interface ReleaseFormProps {
  readonly jobId: string;
  readonly csrf: string;
  readonly submissionId: string;
  /** Ready and never released. */
  readonly fresh: number;
  /** Ready, released before and changed since. */
  readonly changed: number;
  readonly waiting: readonly { readonly id: string; readonly key: string; readonly bars: readonly string[] }[];
}

const SHOWN = 20;

/** Hands to the floor what is ready, and says what waits and why. */
export function ReleaseForm(props: ReleaseFormProps): JSX.Element {
  const { jobId, csrf, submissionId, fresh, changed, waiting } = props;
  const ready = fresh + changed;
  return (
    <Part title="Release to the floor" id="release">
      {ready === 0 ? (
        <p class="soft">
          {waiting.length === 0 ? 'The floor has every run as it is designed.' : 'No run is ready to be released.'}
        </p>
      ) : (
        <Form action={`/jobs/${jobId}/releases`} csrf={csrf} submissionId={submissionId}>
          <p>
            {sayReady(fresh, changed)} Pieces, joints, hangers and tap-offs get an identity that later revisions keep.
          </p>
          {changed > 0 && (
            <TextField name="reason" label="Why the released runs change" need="required" hint="The floor reads it." />
          )}
          <Button kind="lead">{ready === 1 ? 'Release one run' : `Release ${ready} runs`}</Button>
        </Form>
      )}
      {waiting.length > 0 && <Waiting jobId={jobId} waiting={waiting} />}
    </Part>
  );
}

function Waiting({ jobId, waiting }: Pick<ReleaseFormProps, 'jobId' | 'waiting'>) {
  return (
    <div class="stack">
      <h3>{waiting.length === 1 ? 'One run waits' : `${waiting.length} runs wait`}</h3>
      <ul class="plain">
        {waiting.slice(0, SHOWN).map((run) => (
          <li key={run.id}>
            <a href={`/jobs/${jobId}/runs/${run.id}#checks`}>{run.key}</a>: {run.bars[0]}
            {run.bars.length > 1 && ` And ${run.bars.length - 1} more.`}
          </li>
        ))}
        {waiting.length > SHOWN && <li class="soft">and {waiting.length - SHOWN} more</li>}
      </ul>
    </div>
  );
}

function sayReady(fresh: number, changed: number): string {
  const parts = [
    ...(fresh > 0 ? [fresh === 1 ? 'one new run' : `${fresh} new runs`] : []),
    ...(changed > 0 ? [changed === 1 ? 'one run changed since its release' : `${changed} runs changed since`] : []),
  ];
  const text = parts.join(' and ');
  return `${text.charAt(0).toUpperCase()}${text.slice(1)} ${fresh + changed === 1 ? 'is' : 'are'} ready.`;
}
