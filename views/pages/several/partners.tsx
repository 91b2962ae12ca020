import type { JSX } from 'preact';
import { Button } from '../../components/button.tsx';
import { type Entered, type FaultOf, faultProps } from '../../components/fault-of.ts';
import { SelectField, TextField, TickField } from '../../components/field.tsx';
import { Form } from '../../components/form.tsx';
import { type FormFault, FormFaults } from '../../components/form-faults.tsx';
import { Part } from '../../components/part.tsx';
import { ChosenRuns } from './carried.tsx';
import { MadePreview, type MadePreviewProps } from './made-preview.tsx';
import { NamingHint } from './naming-hint.tsx';

export interface PartnersPageProps {
  readonly action: string;
  readonly csrf: string;
  readonly pickHref: string;
  readonly runs: readonly string[];
  readonly entered: Entered;
  readonly faultOf: FaultOf;
  readonly summary: readonly FormFault[];
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
  const { action, csrf, pickHref, runs, entered, faultOf, summary, example, preview } = props;
  const entry = (name: string, label: string) => ({
    name,
    label,
    value: entered[name] ?? '',
    ...faultProps(faultOf, name),
  });
  const tick = (name: string, label: string) => ({
    name,
    label,
    ticked: entered[name] === 'yes' ? ('yes' as const) : ('no' as const),
  });
  return (
    <>
      <FormFaults faults={summary} />
      {preview !== null && <MadePreview {...preview} />}
      <Form action={action} csrf={csrf}>
        <ChosenRuns runs={runs} pickHref={pickHref} />
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
        <Button {...(preview === null ? { kind: 'lead' as const } : {})}>Show what would be made</Button>
      </Form>
    </>
  );
}
