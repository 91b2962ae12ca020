import type { JSX } from 'preact';
import { Button } from '../../components/button.tsx';
import { type Entered, type FaultOf, faultProps } from '../../components/fault-of.ts';
import { HintAndFault } from '../../components/field/frame.tsx';
import { type Option, TextField, TickField } from '../../components/field.tsx';
import { Form } from '../../components/form.tsx';
import { type FormFault, FormFaults } from '../../components/form-faults.tsx';
import { Part } from '../../components/part.tsx';
import { ChosenRuns } from './carried.tsx';
import { MadePreview, type MadePreviewProps } from './made-preview.tsx';
import { NamingHint } from './naming-hint.tsx';

export interface CopiesPageProps {
  readonly action: string;
  readonly csrf: string;
  readonly pickHref: string;
  readonly runs: readonly string[];
  readonly entered: Entered;
  readonly faultOf: FaultOf;
  readonly summary: readonly FormFault[];
  readonly levels: readonly Option[];
  readonly chosenLevels: readonly string[];
  readonly example: string;
  readonly preview: MadePreviewProps | null;
}

/** Runs copied to further rows and other levels. */
export function CopiesPage(props: CopiesPageProps): JSX.Element {
  const { action, csrf, pickHref, runs, entered, faultOf, summary, levels, chosenLevels, example, preview } = props;
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
        <Part title="Where to" id="where">
          <div class="fields">
            <TextField
              {...entry('rows', 'Further rows')}
              kind="number"
              hint="How many copies of each on its own level and on every level below; 0 for other levels alone."
            />
            <TextField
              {...entry('pitch.xMm', 'Pitch, east')}
              kind="length"
              hint={`From row to row. Like ${example}; west is negative.`}
            />
            <TextField
              {...entry('pitch.yMm', 'Pitch, north')}
              kind="length"
              hint="South is negative. In a hall that stands askew give both."
            />
            <Levels levels={levels} chosen={chosenLevels} faultOf={faultOf} />
          </div>
        </Part>
        <Part title="What they are called" id="names">
          <div class="fields">
            <TextField
              {...entry('step', 'Numbers count on by')}
              kind="number"
              need="optional"
              hint="From row to row; empty: by as many rows as are copied."
            />
            <TextField
              {...entry('names', 'Naming')}
              need="optional"
              hint={<NamingHint usual="the level is replaced and the number beside it counted on" />}
            />
            <TextField
              {...entry('supply', 'Supply of the copies')}
              need="optional"
              hint="Empty: the supply is renamed by the same rule. Or a naming, such as PDU-{level}-{side}."
            />
          </div>
        </Part>
        <Part title="What comes along" id="along">
          <TickField {...tick('taps', 'Tap-offs, with what they serve renamed by the same rule')} />
          <TickField {...tick('branches', 'Branches of these runs')} />
        </Part>
        <Button {...(preview === null ? { kind: 'lead' as const } : {})}>Show what would be made</Button>
      </Form>
    </>
  );
}

function Levels({
  levels,
  chosen,
  faultOf,
}: {
  levels: readonly Option[];
  chosen: readonly string[];
  faultOf: FaultOf;
}) {
  return (
    <fieldset class="fillin" id="f-levels">
      <legend>Other levels</legend>
      <div class="choices entry">
        {levels.length === 0 && <span class="soft">The job has no other level.</span>}
        {levels.map((level) => (
          <label key={level.value} class="tick">
            <input type="checkbox" name="levels" value={level.value} checked={chosen.includes(level.value)} />
            <span>{level.word}</span>
          </label>
        ))}
      </div>
      <HintAndFault name="levels" {...faultProps(faultOf, 'levels')} />
    </fieldset>
  );
}
