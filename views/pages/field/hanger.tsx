import type { JSX } from 'preact';
import type { SupportCard } from '../../../src/domain/quality/support-card.ts';
import type { Window } from '../../../src/domain/quality/support-surroundings.ts';
import { formatLength, writeLength } from '../../../src/domain/units/format-length.ts';
import type { Length } from '../../../src/domain/units/length.ts';
import { formatWeight } from '../../../src/domain/units/quantities.ts';
import { Button } from '../../components/button.tsx';
import { TextArea, TextField, TickField } from '../../components/field.tsx';
import { Form } from '../../components/form.tsx';
import { Mark } from '../../components/mark.tsx';
import { Time } from '../../components/time.tsx';
import { listed } from '../../words/quality/figures.ts';
import type { Speech } from '../../words/quality.ts';
import { Beside, type BesideLink } from './beside.tsx';
import { entriesOf, type FieldTrouble } from './entries.ts';
import { PlaceSaid, type PlaceVerdict } from './hanger/place-said.tsx';
import { History } from './history.tsx';
import { NextUp } from './next-up.tsx';

export interface HangerPageProps {
  readonly jobId: string;
  readonly csrf: string;
  readonly freshId: string;
  readonly say: Speech;
  readonly hanger: {
    readonly id: string;
    readonly mark: string;
    readonly planned: Length;
    readonly version: number;
    readonly loadKg: number;
    readonly rod: string | null;
    readonly drop: Length | null;
  };
  readonly card: SupportCard;
  /** Where it may stand by the rules of the layout. */
  readonly windows: readonly Window[];
  /** The place that was asked about without recording. */
  readonly asked: PlaceVerdict | null;
  readonly viewer: { readonly id: string; readonly mayInstall: boolean; readonly mayAccept: boolean };
  readonly isOwnWork: boolean;
  readonly correcting: { readonly id: string } | null;
  readonly trouble: FieldTrouble | null;
  readonly before: BesideLink | null;
  readonly after: BesideLink | null;
  readonly run: BesideLink;
}

/** The card of one hanger: where it may stand, set, accepted. */
export function HangerPage(props: HangerPageProps): JSX.Element {
  const { hanger, card, jobId, say, after, correcting } = props;
  const href = `/jobs/${jobId}/hangers/${hanger.id}`;
  const isOpen = card.set === null || correcting !== null;
  return (
    <>
      <HangerFacts {...props} />
      {isOpen ? <Setting {...props} href={href} /> : <Standing {...props} href={href} />}
      {!isOpen && after !== null && (
        <NextUp what={`hanger ${after.mark}`} href={after.href} go={`Card of ${after.mark}`} />
      )}
      <History
        {...props}
        records={card.records}
        action={href}
        version={hanger.version}
        label={`Hanger ${hanger.mark}`}
        correctHref={(id, kind) => (kind === 'support-set' ? `${href}?correct=${id}` : null)}
      />
      <p class="soft">{sayLoad(say)}</p>
      <Beside of="hanger" before={props.before} after={after} run={props.run} />
    </>
  );
}

function sayLoad({ units }: Speech): string {
  return `Distances are from the feed, ${units === 'ft-in' ? 'in feet and inches' : 'in metres'}, along the busway. Loads are by simple spans with all planned tap-offs on; they are no sealed design.`;
}

function HangerFacts({ hanger, card, windows, say }: HangerPageProps) {
  const { units } = say;
  return (
    <div class="facts">
      <p class="row">
        <Mark state={card.state} />
        <strong>
          {card.measured === null ? 'planned at' : 'measured at'} {formatLength(card.measured ?? hanger.planned, units)}
        </strong>
      </p>
      {card.measured !== null && <p>Planned at {formatLength(hanger.planned, units)}.</p>}
      <p>
        {windows.length === 0
          ? 'No place between its neighbours is legal: ask the office.'
          : `May stand from ${listed(windows.map(({ from, to }) => `${formatLength(from, units)} to ${formatLength(to, units)}`))}.`}
      </p>
      <p class="soft">
        Load {formatWeight(hanger.loadKg, units)}
        {hanger.rod !== null && <>; rod {hanger.rod}</>}
        {hanger.drop !== null && <>, {formatLength(hanger.drop, units)} long</>}
      </p>
    </div>
  );
}

function Setting(props: HangerPageProps & { readonly href: string }) {
  const { hanger, href, csrf, trouble, freshId, viewer, correcting, asked, card, say } = props;
  if (!viewer.mayInstall) return <p class="waits">You can read this card. An installer or a foreman records on it.</p>;
  const entries = entriesOf(trouble, 'set', freshId);
  const action = correcting === null ? href : `${href}?correct=${correcting.id}`;
  const before = card.measured === null ? '' : writeLength(card.measured, say.units);
  return (
    <section class="next-up" aria-label="Set it" id="next">
      <h2>{correcting === null ? `Set ${hanger.mark}` : `Replace the record of ${hanger.mark}`}</h2>
      <Form
        action={action}
        csrf={csrf}
        submissionId={entries.submissionId}
        version={hanger.version}
        keep={{ label: `Hanger ${hanger.mark}, set` }}
      >
        <input type="hidden" name="do" value="set" />
        {correcting !== null && <input type="hidden" name="supersedes" value={correcting.id} />}
        <MeasuredField {...props} value={entries.text('measured', before).value} fault={entries.fault('measured')} />
        <div id="place-said" aria-live="polite">
          {asked !== null && <PlaceSaid asked={asked} say={say} />}
        </div>
        <TickField {...entries.tick('rodPlumb')} label="Rod plumb" />
        <TickField {...entries.tick('loadNut')} label="Load nut set" />
        <TickField {...entries.tick('lockNut')} label="Lock nut set" />
        {correcting !== null && (
          <TextField {...entries.text('cause')} label="Why the first record is replaced" need="required" />
        )}
        <details open={entries.text('note').value !== ''}>
          <summary>Write a note</summary>
          <TextArea {...entries.text('note')} label="Note" need="optional" rows={3} />
        </details>
        <Button kind="lead">{correcting === null ? `${hanger.mark} is set` : 'Replace the record'}</Button>
      </Form>
      {correcting !== null && <a href={href}>Leave it as it is</a>}
    </section>
  );
}

/** Asks the rules as it is typed; without script the record itself is refused with the same words. */
function MeasuredField(
  props: HangerPageProps & { readonly href: string; readonly value: string; readonly fault: string | undefined },
) {
  const { hanger, say, href, value, fault } = props;
  return (
    <div hx-get={`${href}/place`} hx-trigger="input delay:400ms" hx-target="#place-said" hx-include="#set-measured">
      <TextField
        name="measured"
        id="set-measured"
        kind="length"
        label="Measured from the feed"
        hint={`Leave empty when it stands at ${formatLength(hanger.planned, say.units)}, as planned.`}
        value={value}
        {...(fault === undefined ? {} : { fault })}
      />
    </div>
  );
}

function Standing(props: HangerPageProps & { readonly href: string }) {
  const { card, say, hanger, viewer, isOwnWork, href, csrf, trouble, freshId } = props;
  const entries = entriesOf(trouble, 'accept', freshId);
  return (
    <>
      {card.set !== null && (
        <p>
          Set by {card.set.by.name}, <Time at={new Date(card.set.at)} zone={say.zone} />.
        </p>
      )}
      {card.accepted !== null ? (
        <p>
          Accepted by {card.accepted.by.name}, <Time at={new Date(card.accepted.at)} zone={say.zone} />.
        </p>
      ) : isOwnWork || !viewer.mayAccept ? (
        <p class="waits">
          {isOwnWork
            ? 'You set it, so another person accepts it.'
            : 'A foreman, an inspector or the office accepts it.'}
        </p>
      ) : (
        <Form
          action={href}
          csrf={csrf}
          submissionId={entries.submissionId}
          version={hanger.version}
          keep={{ label: `Hanger ${hanger.mark}, acceptance` }}
        >
          <input type="hidden" name="do" value="accept" />
          <Button kind="lead">Accept {hanger.mark}</Button>
        </Form>
      )}
    </>
  );
}
