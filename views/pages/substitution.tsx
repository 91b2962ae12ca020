import type { JSX } from 'preact';
import type { JointBar } from '../../src/domain/layout/joint-bars.ts';
import type { PlacedPiece, RunLayout } from '../../src/domain/layout/result.ts';
import { sayIn } from '../../src/domain/layout/say.ts';
import type { UnitSystem } from '../../src/domain/model.ts';
import { isHung, type PieceState } from '../../src/domain/quality/states.ts';
import { Button } from '../components/button.tsx';
import { Caution } from '../components/caution.tsx';
import { HintAndFault } from '../components/field/frame.tsx';
import { SelectField, TextArea } from '../components/field.tsx';
import { Form } from '../components/form.tsx';
import { Mark } from '../components/mark.tsx';
import { pieceWord } from '../drawings/strip/words.ts';
import { briefWords, type Standing, sumWords, type Way } from '../words/substitution.ts';
import { NotHere } from './substitution/not-here.tsx';
import { OneWay } from './substitution/one-way.tsx';

export interface SubstitutionPageProps {
  readonly action: string;
  readonly csrf: string;
  readonly submissionId: string;
  /** Of the run. */
  readonly version: number;
  readonly units: UnitSystem;
  readonly type: string;
  readonly piece: { readonly mark: string; readonly state: string; readonly placed: PlacedPiece };
  readonly cardHref: string;
  readonly layout: RunLayout;
  /** The office has changed the run's design since its release. */
  readonly changed: boolean;
  readonly hangersDiffer: boolean;
  readonly open: readonly (Way & { readonly value: string })[];
  readonly stopped: readonly Way[];
  readonly barred: readonly { readonly lengths: readonly number[]; readonly at: number; readonly bar: JointBar }[];
  readonly zones: readonly JointBar[];
  readonly wouldFill: string | null;
  readonly joints: readonly Standing[];
  readonly supports: readonly Standing[];
  readonly causes: readonly { readonly value: string; readonly word: string }[];
  readonly entered: { readonly lengths: string | null; readonly cause: string; readonly reason: string };
  readonly faultOf: (name: string) => string | undefined;
}

/** Chooses what is put in the place of one section, with what each way does to the run, before anything is written. */
export function SubstitutionPage(props: SubstitutionPageProps): JSX.Element {
  return (
    <>
      <PieceFacts {...props} />
      {props.wouldFill !== null ? (
        <section class="next-up">
          <h2>Nothing to choose</h2>
          <p>{props.wouldFill}</p>
        </section>
      ) : (
        <ChoiceForm {...props} />
      )}
      {props.open.length > 0 && (
        <p>
          Drawn: <strong>firm</strong> the new sections, <strong>+</strong> a hanger that comes, <strong>×</strong> one
          that goes, <strong>black</strong> a tap-off that moves, <strong>bar below</strong> where no joint may stand.
        </p>
      )}
      {props.open.map((way) => (
        <OneWay key={way.value} {...props} way={way} />
      ))}
      <NotHere {...props} />
      <Caution>
        <p>
          Whether a joint may be added here is for the maker’s sheet and the local code to say. A section that hangs
          comes down, and another goes up, only with the run isolated, locked out and proved dead.
        </p>
      </Caution>
    </>
  );
}

function PieceFacts({ piece, units, type, changed, hangersDiffer, cardHref }: SubstitutionPageProps) {
  const say = sayIn(units);
  const { from, to, kind } = piece.placed;
  return (
    <div class="facts">
      <p class="row">
        <Mark state={piece.state as PieceState} />
        <strong>
          {pieceWord(kind)} {say(to - from)}
        </strong>{' '}
        <a href={cardHref}>Card of {piece.mark}</a>
      </p>
      <p>
        From {say(from)} to {say(to)}, type {type}. What is put in its place adds up to the same, so the rest of the run
        stays where it is. Another {say(to - from)} in its place changes nothing and needs no substitution.
      </p>
      {isHung(piece.state) && (
        <p>
          <strong>It hangs.</strong> Its records and those of the joints at its ends stay in the history under their own
          marks; nothing of them passes to what comes in its place.
        </p>
      )}
      {changed && (
        <p>
          <strong>The office has changed this run since its release.</strong> The substitution goes into the run as
          released, which is what the floor builds; the office sees in its own design whether it can stand there too.
        </p>
      )}
      {hangersDiffer && (
        <p>
          <strong>The sheet of type {type} or the run’s surroundings have changed since the release:</strong> some
          hangers below change for that, whatever is put in.
        </p>
      )}
    </div>
  );
}

function ChoiceForm(props: SubstitutionPageProps) {
  const { open, units, entered, faultOf } = props;
  const say = sayIn(units);
  const fault = faultOf('lengths');
  const chosen = entered.lengths ?? open[0]?.value;
  return (
    <section class="next-up">
      <h2>Put in its place</h2>
      <Form action={props.action} csrf={props.csrf} submissionId={props.submissionId} version={props.version}>
        <fieldset class="fillin" id="f-lengths" aria-describedby={fault === undefined ? undefined : 'f-lengths-fault'}>
          <legend>Sections, from the feed on</legend>
          <div>
            {open.map((way) => (
              <label key={way.value} class="tick">
                <input type="radio" name="lengths" value={way.value} checked={way.value === chosen} required />
                <span>
                  <strong>{sumWords(way.lengths, say)}</strong>: {briefWords(way)}
                </span>
              </label>
            ))}
          </div>
          <HintAndFault name="lengths" {...(fault === undefined ? {} : { fault })} />
        </fieldset>
        <SelectField
          name="cause"
          label="Why"
          need="required"
          value={entered.cause}
          fault={faultOf('cause')}
          options={props.causes}
        />
        <TextArea
          name="reason"
          label={`What happened to ${props.piece.mark}`}
          need="required"
          rows={2}
          value={entered.reason}
          fault={faultOf('reason')}
          hint="It stands with the revision, under your name."
        />
        <Button kind="lead">Put them in: field revision</Button>
      </Form>
    </section>
  );
}
