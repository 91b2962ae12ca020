import { Button } from '../../../components/button.tsx';
import { ChoiceField, TextField } from '../../../components/field.tsx';
import { Form } from '../../../components/form.tsx';
import { entriesOf } from '../entries.ts';
import type { PiecePageProps } from '../piece.tsx';

export function Hanging(props: PiecePageProps & { readonly action: string }) {
  const { piece, card, action, csrf, trouble, freshId, viewer, run } = props;
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
          keep={{ label: `${run.mark} ${piece.mark}, hung` }}
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
            keep={{ label: `${run.mark} ${piece.mark}, on site` }}
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
