import type { JSX } from 'preact';
import {
  type CriterionResult,
  INSULATION_RULES,
  type InsulationRule,
} from '../../../src/domain/quality/insulation/criterion.ts';
import type { Question } from '../../../src/domain/quality/insulation/questions.ts';
import type { Length } from '../../../src/domain/units/length.ts';
import { Caution } from '../../components/caution.tsx';
import { ruleWord } from '../../words/quality/insulation-words.ts';
import type { Speech } from '../../words/quality.ts';
import type { FieldTrouble } from './entries.ts';
import type { DewPoint } from './insulation/dew-point-said.tsx';
import { neededWords, RuleWords } from './insulation/rule-words.tsx';
import { TestForm } from './insulation/test-form.tsx';
import { type TestLine, Tests } from './insulation/tests.tsx';

export interface InsulationPageProps {
  readonly path: string;
  readonly csrf: string;
  readonly freshId: string;
  readonly version: number;
  readonly say: Speech;
  readonly runKey: string;
  readonly length: Length;
  /** The rule of the job; null until its first test names one. */
  readonly rule: InsulationRule | null;
  readonly criteria: Readonly<Record<InsulationRule, CriterionResult>>;
  readonly pairs: readonly string[];
  readonly tests: readonly TestLine[];
  readonly last: {
    readonly id: string;
    readonly calibrationDue: string | null;
    readonly topRange: { readonly value: number; readonly unit: string } | null;
  } | null;
  readonly dewPoint: DewPoint | null;
  readonly questions: readonly Question[];
  readonly mayTest: boolean;
  readonly trouble: FieldTrouble | null;
  readonly run: { readonly href: string; readonly mark: string };
}

/** The insulation test of a run: the rule on top with the limit for this very length, then the sheet, judged when it is recorded. */
export function InsulationPage(props: InsulationPageProps): JSX.Element {
  const { rule, criteria, length, say, tests, path, run, mayTest } = props;
  return (
    <>
      {rule === null ? <RuleChoiceWords {...props} /> : <RuleWords found={criteria[rule]} length={length} say={say} />}
      {tests.length > 0 && <Tests {...props} />}
      <Caution>
        <p>
          <strong>The test voltage can hurt.</strong> Nobody touches the run or works on anything connected to it while
          it is tested; discharge it afterwards.
        </p>
      </Caution>
      {mayTest ? <TestForm {...props} /> : <p class="waits">A foreman, an inspector or the office records the test.</p>}
      <p class="row">
        <a href={`${path}/blank`}>Blank test sheet to print</a>
        <a href={run.href}>Back to run {run.mark}</a>
      </p>
    </>
  );
}

function RuleChoiceWords({ criteria, length, say }: InsulationPageProps) {
  return (
    <div class="stack">
      <p>The first test of this job settles by which rule all its tests are judged. What each would ask of this run:</p>
      <ul>
        {INSULATION_RULES.map((rule) => {
          const found = criteria[rule];
          return (
            <li key={rule}>
              <strong>{ruleWord(rule)}:</strong>{' '}
              {found.ok ? neededWords(found.criterion, length, say) : 'its table has no row for this busway.'}
            </li>
          );
        })}
      </ul>
    </div>
  );
}
