import type { JSX } from 'preact';
import { type FaultOf, faultProps } from '../../components/fault-of.ts';
import { HintAndFault } from '../../components/field/frame.tsx';
import { type Option, TextField, TickField } from '../../components/field.tsx';
import { Part } from '../../components/part.tsx';
import { MadePreview, type MadePreviewProps } from './made-preview.tsx';
import { NamingHint } from './naming-hint.tsx';
import { entryOf, SeveralForm, type SeveralFormProps, tickOf } from './several-form.tsx';

export interface CopiesPageProps extends SeveralFormProps {
  readonly levels: readonly Option[];
  readonly chosenLevels: readonly string[];
  readonly example: string;
  readonly preview: MadePreviewProps | null;
}

/** Runs copied to further rows and other levels. */
export function CopiesPage(props: CopiesPageProps): JSX.Element {
  const { faultOf, levels, chosenLevels, example, preview } = props;
  const [entry, tick] = [entryOf(props), tickOf(props)];
  const made = preview === null ? null : <MadePreview {...preview} />;
  return (
    <SeveralForm form={props} preview={made} ask="Show what would be made">
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
    </SeveralForm>
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
