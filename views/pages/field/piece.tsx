import type { JSX } from 'preact';
import type { PlacedPiece } from '../../../src/domain/layout/result.ts';
import type { Side } from '../../../src/domain/model.ts';
import type { PieceCard } from '../../../src/domain/quality/piece-card.ts';
import type { JointState, PieceState } from '../../../src/domain/quality/states.ts';
import { formatLength } from '../../../src/domain/units/format-length.ts';
import { Mark } from '../../components/mark.tsx';
import { Time } from '../../components/time.tsx';
import { handWords, pieceWord } from '../../drawings/strip/words.ts';
import type { Speech } from '../../words/quality.ts';
import { Beside, type BesideLink } from './beside.tsx';
import type { FieldTrouble } from './entries.ts';
import { History } from './history.tsx';
import { NextUp } from './next-up.tsx';
import { Hanging } from './piece/hanging.tsx';
import { Quarantine } from './piece/quarantine.tsx';
import { ThingRows } from './thing-rows.tsx';
import { WaySketch } from './way-sketch.tsx';

export interface PiecePageProps {
  readonly jobId: string;
  readonly csrf: string;
  readonly freshId: string;
  readonly say: Speech;
  readonly piece: PlacedPiece & {
    readonly id: string;
    /** Short: "P03". */
    readonly mark: string;
    readonly state: PieceState;
    readonly version: number;
    readonly conductorSide: Side;
    /** Which way tap-offs face at its two ends; one and the same but on a bend. */
    readonly faces: { readonly near: string | null; readonly far: string | null };
    /** Where they would face at the near end with the piece the wrong way round. */
    readonly otherWay: string | null;
  };
  readonly card: PieceCard;
  readonly joints: readonly {
    readonly id: string;
    readonly href: string;
    readonly mark: string;
    readonly state: JointState;
    readonly what: string;
  }[];
  readonly viewer: {
    readonly id: string;
    readonly role: string | null;
    readonly mayInstall: boolean;
    readonly mayAccept: boolean;
  };
  /** null for those who may not, for a fitting, and for what has left the design. */
  readonly substituteHref: string | null;
  readonly trouble: FieldTrouble | null;
  readonly before: BesideLink | null;
  readonly after: BesideLink | null;
  readonly run: BesideLink;
}

/** The card of one section or fitting: on site, which way round, hung, or held in quarantine. */
export function PiecePage(props: PiecePageProps): JSX.Element {
  const { piece, card, jobId, say, joints } = props;
  const href = `/jobs/${jobId}/pieces/${piece.id}`;
  return (
    <>
      <PieceFacts {...props} />
      <WaySketch mark={piece.mark} side={piece.conductorSide} compass={piece.faces.near} />
      {piece.faces.near !== piece.faces.far && (
        <p>
          Before the bend tap-offs face <strong>{facesWord(piece.faces.near, piece.conductorSide)}</strong>, after it{' '}
          <strong>{facesWord(piece.faces.far, piece.conductorSide)}</strong>.
        </p>
      )}
      {card.quarantine !== null && <Quarantine {...props} action={href} />}
      {card.quarantine === null && card.hung === null && <Hanging {...props} action={href} />}
      {card.hung !== null && (
        <p>
          Hung by {card.hung.by.name}, <Time at={new Date(card.hung.at)} zone={say.zone} />.
        </p>
      )}
      {joints.length > 0 && (
        <section>
          <h2>Joints at its ends</h2>
          <ThingRows rows={joints} label="Joints at its ends" />
        </section>
      )}
      {card.hung !== null && props.after !== null && (
        <NextUp what={`piece ${props.after.mark}`} href={props.after.href} go={`Card of ${props.after.mark}`} />
      )}
      {card.quarantine === null && <Quarantine {...props} action={href} />}
      {props.substituteHref !== null && (
        <p>
          Damaged, late or wrong, and none like it at hand?{' '}
          <a class="button" href={props.substituteHref}>
            Make {piece.mark} up of other sections
          </a>
        </p>
      )}
      <History
        {...props}
        records={card.records}
        action={href}
        version={piece.version}
        label={`${props.run.mark} ${piece.mark}`}
        correctHref={() => null}
      />
      <Beside of="piece" before={props.before} after={props.after} run={props.run} />
    </>
  );
}

/** "NORTH", or the side where no compass point is. */
export function facesWord(compass: string | null, side: Side): string {
  return compass === null ? `${side.toUpperCase()}, seen from the feed` : compass.toUpperCase();
}

function PieceFacts({ piece, card, say }: PiecePageProps) {
  const { units } = say;
  return (
    <div class="facts">
      <p class="row">
        <Mark state={piece.state} />
        <strong>
          {pieceWord(piece.kind)} {formatLength(piece.to - piece.from, units)}
        </strong>
      </p>
      <p>
        {piece.hand !== null && <>{handWords(piece.hand)}; </>}
        from {formatLength(piece.from, units)} to {formatLength(piece.to, units)}
        {card.lot !== null && <>; lot {card.lot}</>}
      </p>
      {card.onSite !== null && card.hung === null && (
        <p>
          On site: {card.onSite.by.name}, <Time at={new Date(card.onSite.at)} zone={say.zone} />
        </p>
      )}
    </div>
  );
}
