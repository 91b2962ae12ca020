import type { JSX } from 'preact';
import type { RunCard } from '../../../src/domain/quality/end-card.ts';
import type { RunEnd, Stamp } from '../../../src/domain/quality/record.ts';
import type { PieceState } from '../../../src/domain/quality/states.ts';
import { Button } from '../../components/button.tsx';
import { Caution } from '../../components/caution.tsx';
import { TickField } from '../../components/field.tsx';
import { Mark } from '../../components/mark.tsx';
import { Part } from '../../components/part.tsx';
import { Time } from '../../components/time.tsx';
import type { Speech } from '../../words/quality.ts';
import { endWord } from '../../words/record-summary.ts';
import { Opening } from './ends/opening.tsx';
import { OtherWork, type WorkLine } from './ends/other-work.tsx';
import { RunForm } from './ends/run-form.tsx';
import { entriesOf, type FieldTrouble } from './entries.ts';
import { History } from './history.tsx';
import { NextUp } from './next-up.tsx';

export interface EndsPageProps {
  readonly action: string;
  readonly csrf: string;
  readonly freshId: string;
  readonly version: number;
  readonly say: Speech;
  readonly runKey: string;
  readonly card: RunCard;
  /** The piece at each open end, by its short mark. */
  readonly pieces: Readonly<Record<RunEnd, { readonly mark: string; readonly state: PieceState } | undefined>>;
  readonly work: readonly WorkLine[];
  readonly viewer: { readonly id: string; readonly mayInstall: boolean; readonly mayAccept: boolean };
  readonly trouble: FieldTrouble | null;
  readonly run: { readonly href: string; readonly mark: string };
}

/** What belongs to a run as a whole: its ends, its slot, and work that only a record can say is done. */
export function EndsPage(props: EndsPageProps): JSX.Element {
  const { card, run, action, version, runKey } = props;
  const allClosed = card.ends.every(({ closed }) => closed !== null) && card.slot !== null;
  return (
    <>
      {card.ends.map(({ end, closed }) => (
        <EndPart key={end} {...props} end={end} closed={closed} />
      ))}
      <SlotPart {...props} />
      <Caution>
        <p>
          <strong>An open end or an open slot is an open live part later.</strong> Both are closed before anything else
          is thought of.
        </p>
      </Caution>
      {allClosed && <NextUp what={`the rest of ${run.mark}`} href={run.href} go={`Run ${run.mark}`} />}
      <OtherWork {...props} />
      <History
        {...props}
        records={card.records}
        action={action}
        version={version}
        label={`Run ${runKey}`}
        correctHref={() => null}
      />
      <p>
        <a href={run.href}>Back to run {run.mark}</a>
      </p>
    </>
  );
}

function EndPart(props: EndsPageProps & { readonly end: RunEnd; readonly closed: Stamp | null }) {
  const { end, closed, pieces, trouble, freshId, viewer, say } = props;
  const piece = pieces[end];
  const close = entriesOf(trouble, `close-${end}`, freshId);
  return (
    <Part title={`${upper(endWord(end))}${piece === undefined ? '' : `, on ${piece.mark}`}`} id={end}>
      {closed !== null ? (
        <>
          <Done stamp={closed} zone={say.zone} word="closed" />
          <Opening {...props} form={`open-${end}`} ask={`The ${endWord(end)} was opened`}>
            <input type="hidden" name="end" value={end} />
          </Opening>
        </>
      ) : viewer.mayInstall ? (
        <RunForm {...props} entries={close} does="close-end" form={`close-${end}`} label={`${endWord(end)} closed`}>
          <input type="hidden" name="end" value={end} />
          <TickField {...close.tick('capFitted')} label="End cap fitted" />
          <TickField {...close.tick('screwSet')} label="Its screw set" />
          <Button kind="lead">The {endWord(end)} is closed</Button>
        </RunForm>
      ) : (
        <Mark state="open" />
      )}
    </Part>
  );
}

function SlotPart(props: EndsPageProps) {
  const { card, trouble, freshId, viewer, say } = props;
  const close = entriesOf(trouble, 'close-slot', freshId);
  return (
    <Part title="Slot" id="slot">
      {card.slot !== null ? (
        <>
          <Done stamp={card.slot} zone={say.zone} word="closed" />
          <Opening {...props} form="open-slot" ask="The slot was opened" />
        </>
      ) : viewer.mayInstall ? (
        <RunForm {...props} entries={close} does="close-slot" form="close-slot" label="slot closed">
          <p>Closure fitted wherever no tap-off sits, over the whole length.</p>
          <Button kind="lead">The unused slot is closed</Button>
        </RunForm>
      ) : (
        <Mark state="open" />
      )}
    </Part>
  );
}

function Done({ stamp, zone, word }: { stamp: Stamp; zone: string | null; word: string }) {
  return (
    <p class="row">
      <Mark state="accepted" word={word} />
      <span>
        {stamp.by.name}, <Time at={new Date(stamp.at)} zone={zone} />
      </span>
    </p>
  );
}

function upper(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
