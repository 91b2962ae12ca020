import type { JSX } from 'preact';
import {
  type CriterionResult,
  INSULATION_RULES,
  type InsulationRule,
} from '../../../src/domain/quality/insulation/criterion.ts';
import { RESISTANCE_UNITS } from '../../../src/domain/quality/insulation/reading.ts';
import type { Length } from '../../../src/domain/units/length.ts';
import { Caution } from '../../components/caution.tsx';
import { Drawing } from '../../components/drawing.tsx';
import { ruleWord } from '../../words/quality/insulation-words.ts';
import type { Speech } from '../../words/quality.ts';
import { Box, Line } from './box.tsx';
import { ISOLATIONS } from './insulation/isolations.tsx';
import { neededWords, RuleWords } from './insulation/rule-words.tsx';

export interface InsulationBlankProps {
  readonly say: Speech;
  readonly length: Length;
  readonly rule: InsulationRule | null;
  readonly criteria: Readonly<Record<InsulationRule, CriterionResult>>;
  readonly pairs: readonly string[];
  readonly type: string;
}

/** The test sheet for a clipboard: the same boxes as on the screen. */
export function InsulationBlank(props: InsulationBlankProps): JSX.Element {
  const { say, length, rule, criteria, pairs, type } = props;
  return (
    <div class="blank">
      <p class="soft">Busway type {type}</p>
      {rule === null ? (
        <ul class="plain">
          {INSULATION_RULES.map((one) => (
            <li key={one}>
              <Box /> {ruleWord(one)}: {saysNeeded(criteria[one], length, say)}
            </li>
          ))}
        </ul>
      ) : (
        <RuleWords found={criteria[rule]} length={length} say={say} />
      )}
      <h2>Isolated, lifted or taken off</h2>
      <ul class="plain columns">
        {ISOLATIONS.map((isolation) => (
          <li key={isolation}>
            <Box /> {isolation}
          </li>
        ))}
        <li>
          <Line of="anything else" />
        </li>
      </ul>
      <div class="lines">
        {LINES.map((line) => (
          <Line key={line} of={line} />
        ))}
      </div>
      <Drawing label="Readings">
        <table>
          <caption>Readings</caption>
          <thead>
            <tr>
              <th scope="col">Pair</th>
              <th scope="col">More than</th>
              <th scope="col">Figure as shown</th>
              <th scope="col">Unit</th>
              <th scope="col">Not measured</th>
              <th scope="col">Meter fault</th>
              <th scope="col">Why</th>
            </tr>
          </thead>
          <tbody>
            {pairs.map((pair) => (
              <tr key={pair}>
                <th scope="row">{pair}</th>
                <td>
                  <Box />
                </td>
                <td />
                <td>{RESISTANCE_UNITS.join(' / ')}</td>
                <td>
                  <Box />
                </td>
                <td>
                  <Box />
                </td>
                <td />
              </tr>
            ))}
          </tbody>
        </table>
      </Drawing>
      <div class="lines">
        <Line of="tested by, signature" />
        <Line of="witness, signature" />
        <Line of="note" />
      </div>
      <Caution>
        <p>
          <strong>The test voltage can hurt.</strong> Nobody touches the run or works on anything connected to it while
          it is tested; discharge it afterwards.
        </p>
      </Caution>
    </div>
  );
}

const LINES = [
  'day and time',
  'test set',
  'last day of its calibration',
  'test voltage, V DC',
  'each pair held for, s',
  'the most it can show',
  'surface of the housing, °C',
  'air, °C',
  'relative humidity, %',
  'length on the sheet',
] as const;

function saysNeeded(found: CriterionResult, length: Length, say: Speech): string {
  return found.ok ? neededWords(found.criterion, length, say) : 'its table has no row for this busway.';
}
