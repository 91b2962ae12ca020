import type { JSX } from 'preact';
import type { Side, Tap } from '../../../src/domain/model.ts';
import type { PieceState, TapState } from '../../../src/domain/quality/states.ts';
import type { TapCard } from '../../../src/domain/quality/tap-card.ts';
import type { Length } from '../../../src/domain/units/length.ts';
import { Caution } from '../../components/caution.tsx';
import type { Speech } from '../../words/quality.ts';
import { Beside, type BesideLink } from './beside.tsx';
import type { FieldTrouble } from './entries.ts';
import { History } from './history.tsx';
import { NextUp } from './next-up.tsx';
import { Checking } from './tap-off/checking.tsx';
import { Setting } from './tap-off/setting.tsx';
import { TapOffFacts } from './tap-off/tap-off-facts.tsx';

export interface TapOffPageProps {
  readonly jobId: string;
  readonly csrf: string;
  readonly freshId: string;
  readonly say: Speech;
  readonly tap: Tap & {
    readonly rowId: string;
    readonly at: Length;
    readonly state: TapState;
    readonly version: number;
    readonly side: Side;
    readonly faces: string | null;
  };
  readonly piece: { readonly mark: string; readonly state: PieceState; readonly href: string | null };
  readonly card: TapCard;
  /** Greatest distance of the drop's first support, with its source; null where the code of the job prints none. */
  readonly dropLimit: { readonly limit: Length; readonly source: string } | null;
  /** Steps of the tap-off's own sheet as they were last written down in this job. */
  readonly knownSteps: readonly string[];
  readonly viewer: {
    readonly id: string;
    readonly name: string;
    readonly mayInstall: boolean;
    readonly mayAccept: boolean;
  };
  readonly isOwnWork: boolean;
  /** What the isolation fields are filled with: as written down last on this run, else by this person now. */
  readonly proved: { readonly by: string; readonly atLocal: string; readonly isRemembered: boolean };
  readonly trouble: FieldTrouble | null;
  readonly before: BesideLink | null;
  readonly after: BesideLink | null;
  readonly run: BesideLink;
}

/** The card of one tap-off: isolation first, then the box, its phases and its drop, then another person's check. */
export function TapOffPage(props: TapOffPageProps): JSX.Element {
  const { tap, card, jobId, after } = props;
  const href = `/jobs/${jobId}/tap-offs/${tap.rowId}`;
  const isRemoved = tap.state === 'removed';
  return (
    <>
      <TapOffFacts {...props} />
      <Caution>
        <p>
          <strong>Set no tap-off on a run that is energised or not proved.</strong> Prove absence of voltage with a
          tester that was itself proved before and after.
        </p>
      </Caution>
      {isRemoved && <p class="waits">This tap-off was taken out. Its records stay.</p>}
      {!isRemoved && card.set === null && <Setting {...props} href={href} />}
      {!isRemoved && card.set !== null && <Checking {...props} href={href} />}
      {card.checked !== null && after !== null && (
        <NextUp what={`tap-off ${after.mark}`} href={after.href} go={`Card of ${after.mark}`} />
      )}
      <History
        {...props}
        records={card.records}
        action={href}
        version={tap.version}
        label={`${props.run.mark} ${tap.id}`}
        correctHref={() => null}
      />
      <Beside of="tap-off" before={props.before} after={after} run={props.run} />
    </>
  );
}
