import type { JSX } from 'preact';
import { SelectField, TextField, TickField } from '../../components/field.tsx';
import { Part } from '../../components/part.tsx';
import { MadePreview, type MadePreviewProps } from './made-preview.tsx';
import { NamingHint } from './naming-hint.tsx';
import { entryOf, SeveralForm, type SeveralFormProps, tickOf } from './several-form.tsx';

export interface PartnersPageProps extends SeveralFormProps {
  readonly example: string;
  readonly preview: MadePreviewProps | null;
}

const WAYS = [
  { value: 'axis-left', word: 'Mirror image, the axis of the row lies to the left' },
  { value: 'axis-right', word: 'Mirror image, the axis of the row lies to the right' },
  { value: 'y', word: 'Mirror image over a line east to west' },
  { value: 'x', word: 'Mirror image over a line north to south' },
  { value: 'beside', word: 'Same course beside it, conductors on the other side' },
];

/** The runs of the other feed side, made from those of one. */
export function PartnersPage(props: PartnersPageProps): JSX.Element {
  const { example, preview } = props;
  const [entry, tick] = [entryOf(props), tickOf(props)];
  const made = preview === null ? null : <MadePreview {...preview} />;
  return (
    <SeveralForm form={props} preview={made} ask="Show what would be made">
      <Part title="Where the partner hangs" id="way">
        <div class="fields">
          <SelectField
            {...entry('way', 'How')}
            options={WAYS}
            hint="Left and right as seen from the feed. A mirror image turns the other way at corners; the same course turns the same way, so its inside elbows become outside ones."
          />
          <TextField
            {...entry('way.awayMm', 'From the run to the axis')}
            kind="length"
            hint={`For the axis of the row: half the distance between the two runs. Like ${example}.`}
          />
          <TextField
            {...entry('way.atMm', 'The line stands at')}
            kind="length"
            hint="For a line: so far north of the origin when it goes east to west, else east of it."
          />
          <TextField
            {...entry('way.xMm', 'Beside it, east')}
            kind="length"
            hint="For the same course; west is negative."
          />
          <TextField {...entry('way.yMm', 'Beside it, north')} kind="length" hint="South is negative." />
        </div>
      </Part>
      <Part title="What it is called" id="names">
        <div class="fields">
          <TextField
            {...entry('names', 'Naming')}
            need="optional"
            hint={<NamingHint usual="the letter of the feed side is changed" />}
          />
          <TextField
            {...entry('supply', 'Supply of the partners')}
            need="optional"
            hint="Empty: the letter of the side is changed in it. The two sides must not share one supply."
          />
        </div>
      </Part>
      <Part title="What comes along" id="along">
        <TickField {...tick('taps', 'Tap-offs for the same equipment')} />
        <TickField {...tick('pairTaps', 'A shared label for equipment that has none')} />
        <TickField {...tick('branches', 'Branches of these runs')} />
      </Part>
    </SeveralForm>
  );
}
