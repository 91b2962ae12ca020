import type { JSX } from 'preact';
import { RESISTANCE_UNITS } from '../../../../src/domain/quality/insulation/reading.ts';
import type { Entries } from '../entries.ts';
import { FaultText } from '../fault-text.tsx';

/** What stands in the first box of a pair. A bound is not a value, and neither is a pair that was not measured. */
export const READS = [
  { value: 'value', word: 'reads' },
  { value: 'more', word: 'more than' },
  { value: 'not-measured', word: 'not measured' },
  { value: 'meter-fault', word: 'meter fault' },
] as const;
export type Reads = (typeof READS)[number]['value'];

/** The boxes of one pair: what the meter said, the figure as written, its unit. */
export function PairEntry({ pair, entries }: { pair: string; entries: Entries }): JSX.Element {
  const [kind, value, unit] = [
    entries.text(`kind ${pair}`, 'value'),
    entries.text(`value ${pair}`),
    entries.text(`unit ${pair}`, 'MΩ'),
  ];
  const fault = entries.fault(`value ${pair}`);
  const faultId = `fault-${pair}`;
  return (
    <div class="pair">
      <strong aria-hidden="true">{pair}</strong>
      <select class="box" name={kind.name} aria-label={`${pair}: what the meter said`}>
        {READS.map((read) => (
          <option key={read.value} value={read.value} selected={read.value === kind.value}>
            {read.word}
          </option>
        ))}
      </select>
      <input
        class="box num"
        name={value.name}
        value={value.value}
        inputMode="decimal"
        autoComplete="off"
        aria-label={`${pair}: figure`}
        aria-invalid={fault === undefined ? undefined : 'true'}
        aria-describedby={fault === undefined ? undefined : faultId}
      />
      <select class="box" name={unit.name} aria-label={`${pair}: unit`}>
        {RESISTANCE_UNITS.map((one) => (
          <option key={one} value={one} selected={one === unit.value}>
            {one}
          </option>
        ))}
      </select>
      {fault !== undefined && <FaultText id={faultId}>{fault}</FaultText>}
    </div>
  );
}
