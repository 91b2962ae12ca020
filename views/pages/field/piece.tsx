import type { JSX } from 'preact';
import type { PlacedPiece } from '../../../src/domain/layout/result.ts';
import type { Side } from '../../../src/domain/model.ts';
import type { PieceCard } from '../../../src/domain/quality/piece-card.ts';
import type { JointState, PieceState } from '../../../src/domain/quality/states.ts';
import { formatLength } from '../../../src/domain/units/format-length.ts';
import { Button } from '../../components/button.tsx';
import { ChoiceField, TextField } from '../../components/field.tsx';
import { Form } from '../../components/form.tsx';
import { Mark } from '../../components/mark.tsx';
import { Time } from '../../components/time.tsx';
import { handWords, pieceWord } from '../../drawings/strip/words.ts';
import type { Speech } from '../../words/quality.ts';
import { Beside, type BesideLink } from './beside.tsx';
import { entriesOf, type FieldTrouble } from './entries.ts';
import { History } from './history.tsx';
import { NextUp } from './next-up.tsx';
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
      <History
        {...props}
        records={card.records}
        action={href}
        version={piece.version}
        label={`Piece ${piece.mark}`}
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

function Hanging(props: PiecePageProps & { readonly action: string }) {
  const { piece, card, action, csrf, trouble, freshId, viewer } = props;
  if (!viewer.mayInstall) return <p class="waits">You can read this card. An installer or a foreman records on it.</p>;
  const hang = entriesOf(trouble, 'hang', freshId);
  const onSite = entriesOf(trouble, 'on-site', freshId);
  return (
    <>
      <section class="next-up" aria-label="Hang it" id="next">
        <h2>Hang {piece.mark}</h2>
        <Form
          action={action}
          csrf={csrf}
          submissionId={hang.submissionId}
          version={piece.version}
          keep={{ label: `Piece ${piece.mark}, hung` }}
        >
          <input type="hidden" name="do" value="hang" />
          <ChoiceField
            {...hang.text('side')}
            label="Seen at both ends: its tap-offs face"
            hint="Look at the piece, not at this page."
            options={sideOptions(props)}
            need="required"
          />
          <TextField
            {...hang.text('second')}
            label="Second person who saw both ends"
            need="optional"
            autocomplete="name"
          />
          <Button kind="lead">{piece.mark} is hung</Button>
        </Form>
      </section>
      {card.onSite === null && (
        <details open={trouble?.form === 'on-site'}>
          <summary>{piece.mark} came on site</summary>
          <Form
            action={action}
            csrf={csrf}
            submissionId={onSite.submissionId}
            version={piece.version}
            keep={{ label: `Piece ${piece.mark}, on site` }}
          >
            <input type="hidden" name="do" value="on-site" />
            <TextField {...onSite.text('lot')} label="Lot or crate" need="optional" />
            <Button>{piece.mark} is on site</Button>
          </Form>
        </details>
      )}
    </>
  );
}

/** Both answers in the same words, left always first, so that the place of an answer tells nothing. */
function sideOptions({ piece }: PiecePageProps) {
  const { conductorSide, faces, otherWay } = piece;
  return (['left', 'right'] as const).map((side) => {
    const compass = side === conductorSide ? faces.near : otherWay;
    const seen = `${side} of the way from the feed`;
    return { value: side, word: compass === null ? seen : `${compass.toUpperCase()}, ${seen}` };
  });
}
