import type { JSX } from 'preact';
import { Button } from '../../../components/button.tsx';
import { TextField, TickField } from '../../../components/field.tsx';
import { Form } from '../../../components/form.tsx';
import { entriesOf, type FieldTrouble } from '../entries.ts';
import { FaultText } from '../fault-text.tsx';

/** A thing that can be ticked: its id, its version as shown, its mark and what it is. */
export interface WalkItem {
  readonly id: string;
  readonly version: number;
  readonly mark: string;
  readonly what: string;
}

export type WalkOf = 'hangers' | 'accept-hangers' | 'pieces' | 'taps';

export interface WalkFormProps {
  readonly does: WalkOf;
  readonly items: readonly WalkItem[];
  readonly path: string;
  readonly csrf: string;
  readonly freshId: string;
  readonly trouble: FieldTrouble | null;
  readonly run: { readonly id: string };
  /** Unfolded, because it is the turn of these things. */
  readonly open: boolean;
}

const WORDS: Readonly<Record<WalkOf, { readonly ask: string; readonly legend: string; readonly button: string }>> = {
  hangers: {
    ask: 'Record several hangers as set',
    legend: 'Set where planned, on this walk',
    button: 'The ticked hangers are set',
  },
  'accept-hangers': {
    ask: 'Accept several hangers',
    legend: 'Looked at and accepted, on this walk',
    button: 'Accept the ticked hangers',
  },
  pieces: {
    ask: 'Record several pieces as on site',
    legend: 'On site, seen and undamaged',
    button: 'The ticked pieces are on site',
  },
  taps: {
    ask: 'Record several tap-offs as on site',
    legend: 'On site, seen and undamaged',
    button: 'The ticked tap-offs are on site',
  },
};

/** How a tick is sent: the thing and the reading it was made on. */
export function walkTick({ id, version }: Pick<WalkItem, 'id' | 'version'>): string {
  return `${id} ${version}`;
}

/** Several like things in one go, where that is honest: each tick becomes a record of its own. */
export function WalkForm(props: WalkFormProps): JSX.Element | null {
  const { does, items, path, csrf, freshId, trouble, run, open } = props;
  if (items.length === 0) return null;
  const { ask, legend, button } = WORDS[does];
  const entries = entriesOf(trouble, does, freshId);
  const fault = entries.fault('things');
  return (
    <details class="group" id={`walk-${does}`} open={open || trouble?.form === does}>
      <summary>
        <h2>{ask}</h2>
      </summary>
      <Form
        action={path}
        csrf={csrf}
        submissionId={entries.submissionId}
        keep={{ label: `${run.id}, ${ask.toLowerCase()}` }}
      >
        <input type="hidden" name="do" value={does} />
        <fieldset class="fillin ticks" aria-describedby={fault === undefined ? undefined : `${does}-fault`}>
          <legend>{legend}</legend>
          {fault !== undefined && <FaultText id={`${does}-fault`}>{fault}</FaultText>}
          {items.map((item) => (
            <label class="tick" key={item.id}>
              <input
                type="checkbox"
                name="things"
                value={walkTick(item)}
                checked={entries.values('things').some((tick) => tick.startsWith(`${item.id} `))}
              />
              <strong>{item.mark}</strong>
              <span>{item.what}</span>
            </label>
          ))}
        </fieldset>
        {does === 'hangers' && (
          <>
            <p class="hint">Of every ticked hanger:</p>
            <TickField {...entries.tick('rodPlumb')} label="Rod plumb" />
            <TickField {...entries.tick('loadNut')} label="Load nut set" />
            <TickField {...entries.tick('lockNut')} label="Lock nut set" />
          </>
        )}
        {(does === 'pieces' || does === 'taps') && (
          <TextField {...entries.text('lot')} label="Lot or crate of all of them" need="optional" />
        )}
        <Button kind="lead">{button}</Button>
      </Form>
    </details>
  );
}
