import type { JSX } from 'preact';
import type { CardStep, JointCard } from '../../../src/domain/quality/joint-card.ts';
import type { SiteRecord } from '../../../src/domain/quality/record.ts';
import type { PieceState } from '../../../src/domain/quality/states.ts';
import { formatLength } from '../../../src/domain/units/format-length.ts';
import type { Length } from '../../../src/domain/units/length.ts';
import { Caution } from '../../components/caution.tsx';
import { Mark } from '../../components/mark.tsx';
import { Notice } from '../../components/notice.tsx';
import { Part } from '../../components/part.tsx';
import { remarkWords, type Speech } from '../../words/quality.ts';
import { Beside, type BesideLink } from './beside.tsx';
import { type Before, entriesOf, type FieldTrouble } from './entries.ts';
import { History, type HistoryProps } from './history.tsx';
import { Acceptance } from './joint/acceptance.tsx';
import { DoneSteps } from './joint/done-steps.tsx';
import { LaterSteps, NextStep } from './joint/next-step.tsx';
import { POLE_ENDS, poleTick } from './joint/pole-ticks.tsx';
import { Reopening } from './joint/reopening.tsx';
import { StepForm } from './joint/step-form.tsx';
import type { LastTool } from './joint/torque-fields.tsx';
import { whole } from './told-text.ts';

export interface JointPageProps {
  readonly jobId: string;
  readonly csrf: string;
  readonly freshId: string;
  readonly say: Speech;
  readonly joint: { readonly id: string; readonly mark: string; readonly at: Length; readonly version: number };
  readonly card: JointCard;
  readonly neighbours: readonly {
    readonly mark: string;
    readonly state: PieceState;
    readonly what: string;
    readonly href: string | null;
  }[];
  readonly viewer: { readonly id: string; readonly mayInstall: boolean; readonly mayAccept: boolean };
  /** Who could accept this joint: names and roles. */
  readonly acceptors: readonly { readonly id: string; readonly name: string; readonly roleWord: string }[];
  readonly lastTool: LastTool | null;
  readonly trouble: FieldTrouble | null;
  /** The record whose correction is asked for. */
  readonly correcting: SiteRecord | null;
  readonly before: BesideLink | null;
  readonly after: BesideLink | null;
  readonly run: BesideLink;
}

/** The card of one joint: its steps in order, the next one large. */
export function JointPage(props: JointPageProps): JSX.Element {
  const { card, joint, say, jobId } = props;
  const href = `/jobs/${jobId}/joints/${joint.id}`;
  const history: HistoryProps = {
    say,
    records: card.records,
    action: href,
    csrf: props.csrf,
    freshId: props.freshId,
    version: joint.version,
    viewer: props.viewer,
    trouble: props.trouble,
    label: `Joint ${joint.mark}`,
    correctHref: (id) => `${href}?correct=${id}`,
  };
  return (
    <>
      <JointFacts {...props} />
      {card.remarks.map((remark) => (
        <Notice key={remark.code} kind="note" text={whole(remarkWords(remark, say))} />
      ))}
      <Uncredited {...props} />
      <Steps {...props} href={href} />
      <Caution />
      <Reopening {...props} action={href} />
      <History {...history} />
      <p>
        <a href={`${href}/blank`}>Blank card to print</a>
      </p>
      <Beside of="joint" before={props.before} after={props.after} run={props.run} />
    </>
  );
}

function JointFacts({ card, joint, neighbours, say }: JointPageProps) {
  const done = card.steps.filter((step) => step.done !== null).length;
  return (
    <div class="facts">
      <p class="row">
        <Mark state={card.state} />
        <span>
          {done} of {card.steps.length} steps
        </span>
        <span>at {formatLength(joint.at, say.units)}</span>
      </p>
      <ul class="plain">
        {neighbours.map(({ mark, state, what, href }) => (
          <li key={mark} class="row">
            {href === null ? mark : <a href={href}>{mark}</a>} {what} <Mark state={state} />
          </li>
        ))}
      </ul>
    </div>
  );
}

function Uncredited({ card, say }: JointPageProps) {
  return (
    <>
      {card.uncredited.map(({ stamp, step, remarks }) => (
        <Notice
          key={stamp.recordId}
          kind="note"
          text={`Step ${step + 1} by ${stamp.by.name} is kept and not credited. ${remarks.map((remark) => whole(remarkWords(remark, say))).join(' ')}`}
        />
      ))}
    </>
  );
}

function Steps(props: JointPageProps & { readonly href: string }) {
  const { card, correcting } = props;
  if (card.sheet.steps === null)
    return (
      <Notice
        kind="stop"
        text="The sheet of this busway type names no steps for the joint, so it can be neither recorded nor accepted. The office enters the steps of the maker’s sheet, with its revision."
      />
    );
  const corrected = correctedStep(props);
  return (
    <>
      <DoneSteps {...props} />
      {corrected !== null && correcting !== null ? (
        <Correction {...props} step={corrected} record={correcting} />
      ) : card.next !== null ? (
        <NextStep {...props} step={card.next} />
      ) : (
        <Acceptance {...props} />
      )}
      <LaterSteps {...props} />
    </>
  );
}

function correctedStep({ card, correcting }: JointPageProps): CardStep | null {
  if (correcting?.body.kind !== 'joint-step') return null;
  return card.steps[correcting.body.step] ?? null;
}

function Correction(
  props: JointPageProps & { readonly href: string; readonly step: CardStep; readonly record: SiteRecord },
) {
  const { step, record, href, joint, trouble, freshId } = props;
  return (
    <Part title={`Correct the record of step ${step.index + 1}`} id="correct">
      <p>{step.text}</p>
      <StepForm
        {...props}
        action={`${href}?correct=${record.id}`}
        version={joint.version}
        mark={joint.mark}
        entries={entriesOf(trouble, 'correct', freshId, asEntered(record))}
        usualUnit={props.say.units === 'ft-in' ? 'lbf-ft' : 'Nm'}
        corrects={{ id: record.id }}
      />
      <p>
        <a href={href}>Leave it as it is</a>
      </p>
    </Part>
  );
}

/** What the record says, as the form would have sent it. */
function asEntered({ body }: SiteRecord): Before {
  if (body.kind !== 'joint-step') return {};
  const { torque, poles, lots, note } = body;
  const text = (name: string, value: string | null | undefined): Before => (value ? { [name]: [value] } : {});
  return {
    seen: (poles ?? []).flatMap((tick) => POLE_ENDS.flatMap((end) => (tick[end] ? [poleTick(tick.pole, end)] : []))),
    ...(torque === null
      ? {}
      : {
          value: [String(torque.value)],
          unit: [torque.unit],
          toolId: [torque.toolId],
          calibrationDue: [torque.calibrationDue],
        }),
    ...text('contactSetLot', lots?.contactSet),
    ...text('clampLot', lots?.clamp),
    ...text('note', note),
  };
}
