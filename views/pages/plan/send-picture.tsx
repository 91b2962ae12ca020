import type { JSX } from 'preact';
import { Button } from '../../components/button.tsx';
import { Confirm } from '../../components/confirm.tsx';
import { faultProps } from '../../components/fault-of.ts';
import { FileField, TextField } from '../../components/field.tsx';
import { Form } from '../../components/form.tsx';
import { Part } from '../../components/part.tsx';
import { backgroundEntryWord } from '../../words/background.ts';
import type { BackgroundPageProps } from './background.tsx';

/** Sends a picture, or another in the place of the one that is there; and takes that away. */
export function SendPicture(props: BackgroundPageProps): JSX.Element {
  const { background, base, csrf, submissionId, page, taken, faultOf } = props;
  const fault = (name: string) => faultOf('file', name);
  const version = background === null ? {} : { version: background.version };
  const lost = background?.calibration ? 'The calibration belongs to this picture and goes with it.' : '';
  return (
    <Part title={background === null ? 'Send a picture' : 'Another picture in its place'} id="send">
      {lost !== '' && <p>{lost}</p>}
      <Form action={base} csrf={csrf} submissionId={submissionId} withFiles="yes" {...version}>
        <FileField
          name="file"
          label={backgroundEntryWord('file')}
          accept="image/png,image/jpeg,application/pdf"
          hint={taken}
          {...faultProps(fault, 'file')}
        />
        <TextField
          name="page"
          label={backgroundEntryWord('page')}
          kind="number"
          need="optional"
          value={page}
          hint="Empty: its first page; another can be chosen afterwards."
          {...faultProps(fault, 'page')}
        />
        <Button kind="lead">
          {background === null ? 'Put it under the plan' : 'Put it in the place of the old one'}
        </Button>
      </Form>
      {background !== null && (
        <Confirm
          ask="Remove the picture"
          question={`${background.name} and its calibration leave the plan. Runs and their drawings stay as they are.`}
          answer="Remove the picture"
          action={`${base}/removal`}
          csrf={csrf}
          version={background.version}
        />
      )}
      <p class="soft">
        The picture is drawn anew here, without what else the file held. It is in backups, and not in the job document:
        whoever takes the job elsewhere sends it there again.
      </p>
    </Part>
  );
}
