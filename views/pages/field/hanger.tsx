import type { JSX } from 'preact';
import type { SupportCard } from '../../../src/domain/quality/support-card.ts';
import type { Window } from '../../../src/domain/quality/support-surroundings.ts';
import { formatLength } from '../../../src/domain/units/format-length.ts';
import type { Length } from '../../../src/domain/units/length.ts';
import { formatWeight } from '../../../src/domain/units/quantities.ts';
import { Mark } from '../../components/mark.tsx';
import { listed } from '../../words/quality/figures.ts';
import type { Speech } from '../../words/quality.ts';
import { Beside, type BesideLink } from './beside.tsx';
import type { FieldTrouble } from './entries.ts';
import type { PlaceVerdict } from './hanger/place-said.tsx';
import { Setting } from './hanger/setting.tsx';
import { Standing } from './hanger/standing.tsx';
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
        label={`${props.run.mark} ${hanger.mark}`}
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
