import type { JSX } from 'preact';
import type { JointCard } from '../../../src/domain/quality/joint-card.ts';
import type { SiteRecord } from '../../../src/domain/quality/record.ts';
import type { PieceState } from '../../../src/domain/quality/states.ts';
import type { Length } from '../../../src/domain/units/length.ts';
import { Caution } from '../../components/caution.tsx';
import { Notice } from '../../components/notice.tsx';
import { remarkWords, type Speech } from '../../words/quality.ts';
import { Beside, type BesideLink } from './beside.tsx';
import type { FieldTrouble } from './entries.ts';
import { History, type HistoryProps } from './history.tsx';
import { Acceptance } from './joint/acceptance.tsx';
import { Correction, correctedStep } from './joint/correction.tsx';
import { DoneSteps } from './joint/done-steps.tsx';
import { JointFacts, Uncredited } from './joint/joint-facts.tsx';
import { LaterSteps, NextStep } from './joint/next-step.tsx';
import { Reopening } from './joint/reopening.tsx';
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
    label: `${props.run.mark} ${joint.mark}`,
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
