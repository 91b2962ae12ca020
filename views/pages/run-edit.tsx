import type { JSX } from 'preact';
import type { UnitSystem } from '../../src/domain/model.ts';
import { Button, ButtonLink } from '../components/button.tsx';
import { Confirm } from '../components/confirm.tsx';
import { type Conflict, ConflictList } from '../components/conflict-list.tsx';
import type { Entered, FaultOf } from '../components/fault-of.ts';
import type { Option } from '../components/field.tsx';
import { Form } from '../components/form.tsx';
import { type FormFault, FormFaults } from '../components/form-faults.tsx';
import { runEntryWord } from '../words/run-entries.ts';
import { DrawnRun, type TypedRunProps } from './run-edit/drawn-run.tsx';
import { FeedFields } from './run-edit/feed-fields.tsx';
import { HangingFields } from './run-edit/hanging-fields.tsx';
import { PlaceFields } from './run-edit/place-fields.tsx';
import { Questions } from './run-edit/questions.tsx';
import type { PasteFaults } from './run-edit/rows-of.tsx';
import { TapFields } from './run-edit/tap-fields.tsx';
import { WayFields } from './run-edit/way-fields.tsx';

export interface SheetFault {
  readonly row: number | null;
  readonly column: string | null;
  readonly value: string;
  readonly problem: string;
  readonly remedy: string;
}

export interface RunEditPageProps {
  readonly jobId: string;
  readonly action: string;
  readonly csrf: string;
  readonly submissionId?: string;
  readonly version?: number;
  /** The run as it stood when the form was first shown, as JSON: tells one's own changes from somebody else's. */
  readonly base?: string;
  readonly entered: Entered;
  readonly faultOf: FaultOf;
  readonly summary: readonly FormFault[];
  /** Figures that are taken as typed once the form is sent again. */
  readonly questions: readonly { readonly field: string; readonly said: string }[];
  readonly asked: string;
  readonly tapFaults: readonly SheetFault[];
  readonly tapQuestions: readonly SheetFault[];
  readonly levels: readonly Option[];
  readonly types: readonly Option[];
  readonly example: string;
  readonly units: UnitSystem;
  readonly drawing: TypedRunProps;
  /** Where the drawing of what is typed comes from. */
  readonly drawHref: string;
  readonly pasteFaults: PasteFaults;
  /** Address of our own files. */
  readonly assets: string;
  /** The label is painted on the floor and can no longer change. */
  readonly released: boolean;
  readonly conflicts: readonly Conflict[] | null;
  readonly leaveHref: string;
  readonly removal: { readonly action: string; readonly label: string } | null;
}

/** A run's design as a plain form, in the units of the job. */
export function RunEditPage(props: RunEditPageProps): JSX.Element {
  const { action, csrf, submissionId, version, base, conflicts, removal } = props;
  return (
    <>
      <FormFaults faults={props.summary} />
      {conflicts !== null && <ConflictList conflicts={conflicts} theirsHref={action} wordOf={runEntryWord} />}
      <Form
        action={action}
        csrf={csrf}
        {...(submissionId === undefined ? {} : { submissionId })}
        {...(version === undefined ? {} : { version })}
      >
        {base !== undefined && <input type="hidden" name="base" value={base} />}
        <input type="hidden" name="asked" value={props.asked} />
        {/* Enter in a field saves, whichever button stands first. */}
        <button type="submit" hidden tabIndex={-1} />
        <Questions questions={props.questions} tapQuestions={props.tapQuestions} />
        <PlaceFields {...props} />
        <FeedFields {...props} />
        <DrawnRun {...props.drawing} href={props.drawHref} />
        <WayFields {...props} />
        <HangingFields {...props} />
        <TapFields {...props} />
        <div class="row">
          <Button kind="lead">{conflicts === null ? 'Save the run' : 'Keep mine: save over theirs'}</Button>
          <ButtonLink href={props.leaveHref} kind="plain">
            Leave it
          </ButtonLink>
        </div>
      </Form>
      <script src={`${props.assets}/run-form.js`} defer />
      {removal !== null && version !== undefined && (
        <Confirm
          ask="Remove the run"
          question={`${removal.label} leaves the design with its tap-offs. It has no records; what it was stays in the audit trail.`}
          answer={`Remove ${removal.label}`}
          action={removal.action}
          csrf={csrf}
          version={version}
        />
      )}
    </>
  );
}
