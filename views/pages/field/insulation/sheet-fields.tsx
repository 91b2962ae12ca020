import { INSULATION_RULES } from '../../../../src/domain/quality/insulation/criterion.ts';
import { formatLength } from '../../../../src/domain/units/format-length.ts';
import { ChoiceField, TextField } from '../../../components/field.tsx';
import { ruleWord } from '../../../words/quality/insulation-words.ts';
import type { Entries } from '../entries.ts';
import type { InsulationPageProps } from '../insulation.tsx';
import { DewPointSaid } from './dew-point-said.tsx';

export interface WithEntries extends InsulationPageProps {
  readonly entries: Entries;
}

export function Instrument({ entries, last, rule, criteria }: WithEntries) {
  const first = rule === null ? null : criteria[rule];
  const needed = first?.ok ? String(first.criterion.testVoltageV) : '';
  return (
    <>
      <h3>Test set</h3>
      {rule === null ? (
        <ChoiceField
          {...entries.text('rule')}
          label="Rule for all tests of this job"
          options={INSULATION_RULES.map((one) => ({ value: one, word: ruleWord(one) }))}
          need="required"
        />
      ) : (
        <input type="hidden" name="rule" value={rule} />
      )}
      <TextField {...entries.text('instrument', last?.id)} label="Test set" hint="The number on it" need="required" />
      <TextField
        {...entries.text('calibrationDue', last?.calibrationDue ?? '')}
        label="Last day of its calibration"
        kind="date"
        hint="Not known: leave it empty; the readings are then information only."
      />
      <TextField
        {...entries.text('testVoltage', needed)}
        label="Test voltage"
        kind="number"
        unit="V DC"
        need="required"
      />
      <TextField {...entries.text('duration')} label="Each pair held for" kind="number" unit="s" need="optional" />
      <TextField
        {...entries.text(
          'topRange',
          last?.topRange === null || last === null ? '' : `${last.topRange.value} ${last.topRange.unit}`,
        )}
        label="The most it can show at this voltage"
        hint="Such as 5 GΩ; needed when it shows OL."
        need="optional"
      />
    </>
  );
}

export function Conditions({ entries, path, dewPoint, length, say }: WithEntries) {
  return (
    <>
      <h3>Conditions</h3>
      <TextField
        {...entries.text('surfaceTemp')}
        label="Surface of the housing"
        kind="number"
        unit="°C"
        hint="A reading is brought to 20 °C by it."
      />
      <div
        hx-get={`${path}/dew-point`}
        hx-trigger="input delay:400ms"
        hx-target="#dew-point-said"
        hx-include="#test-surfaceTemp, #test-ambientTemp, #test-humidity"
      >
        <TextField {...entries.text('ambientTemp')} label="Air" kind="number" unit="°C" />
        <TextField {...entries.text('humidity')} label="Relative humidity" kind="number" unit="%" />
      </div>
      <div id="dew-point-said" aria-live="polite">
        {dewPoint !== null && <DewPointSaid dewPoint={dewPoint} />}
      </div>
      <TextField
        {...entries.text('lengthTyped')}
        label="Length on your own sheet, if you have one"
        kind="length"
        hint={`The record has ${formatLength(length, say.units)}, and that one counts.`}
        need="optional"
      />
    </>
  );
}
