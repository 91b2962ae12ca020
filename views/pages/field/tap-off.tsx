import type { JSX } from 'preact';
import type { Side, Tap } from '../../../src/domain/model.ts';
import type { PieceState, TapState } from '../../../src/domain/quality/states.ts';
import type { TapCard } from '../../../src/domain/quality/tap-card.ts';
import { formatLength } from '../../../src/domain/units/format-length.ts';
import type { Length } from '../../../src/domain/units/length.ts';
import { Caution } from '../../components/caution.tsx';
import { DefinitionList } from '../../components/definition-list.tsx';
import { Mark } from '../../components/mark.tsx';
import { Time } from '../../components/time.tsx';
import type { Speech } from '../../words/quality.ts';
import { Beside, type BesideLink } from './beside.tsx';
import type { FieldTrouble } from './entries.ts';
import { History } from './history.tsx';
import { NextUp } from './next-up.tsx';
import { Checking } from './tap-off/checking.tsx';
import { Setting } from './tap-off/setting.tsx';

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
        label={`Tap-off ${tap.id}`}
        correctHref={() => null}
      />
      <Beside of="tap-off" before={props.before} after={after} run={props.run} />
    </>
  );
}

function TapOffFacts({ tap, piece, card, say }: TapOffPageProps) {
  const { units } = say;
  return (
    <div class="facts">
      <p class="row">
        <Mark state={tap.state} />
        <strong>at {formatLength(tap.at, units)}</strong>
      </p>
      <p class="large">
        <strong>
          {tap.phases}
          {tap.neutral && '-N'}, {tap.deviceA} A
        </strong>
      </p>
      <DefinitionList
        entries={[
          ...(tap.serves === null ? [] : [{ term: 'Serves', value: tap.serves }]),
          { term: 'Faces', value: tap.faces === null ? `${tap.side}, seen from the feed` : tap.faces.toUpperCase() },
          {
            term: 'On piece',
            value: (
              <span class="row">
                {piece.href === null ? piece.mark : <a href={piece.href}>{piece.mark}</a>} <Mark state={piece.state} />
              </span>
            ),
          },
          { term: 'Drop', value: tap.drop === null ? 'none planned' : formatLength(tap.drop, units) },
          ...(card.set === null
            ? []
            : [
                {
                  term: 'Set',
                  value: (
                    <>
                      {card.set.by.name}, <Time at={new Date(card.set.at)} zone={say.zone} />
                    </>
                  ),
                },
              ]),
          ...(card.checked === null
            ? []
            : [
                {
                  term: 'Checked',
                  value: (
                    <>
                      {card.checked.by.name}, <Time at={new Date(card.checked.at)} zone={say.zone} />
                    </>
                  ),
                },
              ]),
        ]}
      />
    </div>
  );
}
