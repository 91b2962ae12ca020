import type { JSX } from 'preact';
import type { Fault } from '../../src/document/fault.ts';
import { Button } from '../components/button.tsx';
import { DocumentFaults } from '../components/document-faults.tsx';
import { faultProps } from '../components/fault-of.ts';
import { FileField, TextArea, TextField } from '../components/field.tsx';
import { Form } from '../components/form.tsx';

export interface BringInProps {
  readonly csrf: string;
  readonly submissionId: string;
  readonly text: string;
  readonly faults: readonly Fault[];
}

/** A job from its document: a file, or its text pasted. Refused whole, with every fault at once and the text kept. */
export function BringIn({ csrf, submissionId, text, faults }: BringInProps): JSX.Element {
  return (
    <div class="stack" id="document">
      <h3>From a job document</h3>
      <DocumentFaults faults={faults} />
      <Form action="/jobs/documents" csrf={csrf} submissionId={submissionId} withFiles="yes">
        <FileField
          name="file"
          label="Job document"
          accept=".json,application/json"
          need="optional"
          hint="A JSON file in the format busway-jobbook/1, as this program also writes it; it holds neither records of the floor nor pictures under plans."
        />
        <TextArea
          name="text"
          label="Or its text"
          kind="sheet"
          value={text}
          rows={text === '' ? 4 : 16}
          need="optional"
          hint="The file counts when both are given."
        />
        <Button kind="lead">Bring in the job</Button>
      </Form>
    </div>
  );
}

export interface DemoJobFormProps {
  readonly csrf: string;
  readonly submissionId: string;
  readonly demoNumber: string;
  readonly demoFault?: string;
}

export function DemoJobForm(props: DemoJobFormProps): JSX.Element {
  const { csrf, submissionId, demoNumber, demoFault } = props;
  return (
    <div class="stack" id="demo">
      <h3>The demo job</h3>
      <p>
        Plover Quay Block C: four floors, twelve runs a floor. Its busway type, prices, hours, people and places are
        invented and fit nothing real.
      </p>
      <Form action="/jobs/demo" csrf={csrf} submissionId={`${submissionId}-demo`}>
        <TextField
          name="demoNumber"
          label="Take it as job number"
          value={demoNumber}
          need="required"
          {...faultProps(() => demoFault, 'demoNumber')}
        />
        <Button>Take the demo job</Button>
      </Form>
    </div>
  );
}
