import type { JSX } from 'preact';
import {
  type CriterionResult,
  INSULATION_RULES,
  type InsulationRule,
} from '../../../src/domain/quality/insulation/criterion.ts';
import type { Question } from '../../../src/domain/quality/insulation/questions.ts';
import type { Verdict } from '../../../src/domain/quality/insulation/verdict.ts';
import { formatLength } from '../../../src/domain/units/format-length.ts';
import type { Length } from '../../../src/domain/units/length.ts';
import { Button } from '../../components/button.tsx';
import { Caution } from '../../components/caution.tsx';
import { ChoiceField, TextArea, TextField, TickField } from '../../components/field.tsx';
import { Form } from '../../components/form.tsx';
import { Part } from '../../components/part.tsx';
import { Time } from '../../components/time.tsx';
import { ruleWord } from '../../words/quality/insulation-words.ts';
import type { Speech } from '../../words/quality.ts';
import { verdictWord } from '../../words/run-status.ts';
import { type Entries, entriesOf, type FieldTrouble } from './entries.ts';
import { type DewPoint, DewPointSaid } from './insulation/dew-point-said.tsx';
import { PairEntry } from './insulation/pair-entry.tsx';
import { Questions } from './insulation/questions.tsx';
import { neededWords, RuleWords } from './insulation/rule-words.tsx';

export interface TestLine {
  readonly id: string;
  readonly href: string;
  readonly at: string;
  readonly by: string;
  readonly verdict: Verdict;
  /** `counts`: it is the newest that stands. */
  readonly stands: 'counts' | 'older' | 'replaced';
  /** Work done since, by its marks. */
  readonly staleBy: readonly string[];
}

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

/** What has to be lifted, opened or taken off: else the readings are of something else, or electronics die. */
export const ISOLATIONS = [
  'Source open and locked, or feed lifted',
  'Neutral-to-ground bond open',
  'Surge protective devices disconnected',
  'Meters and electronics disconnected',
  'Indicating lamps disconnected',
  'Tap-off devices off, or tap-offs taken out',
] as const;

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

function Tests({ tests, say }: InsulationPageProps) {
  return (
    <Part title="Tests of this run" id="tests">
      <ul class="history">
        {tests.map((test) => (
          <li key={test.id}>
            <a class="reach" href={test.href}>
              <span>
                {verdictWord(test.verdict)}, <Time at={new Date(test.at)} zone={say.zone} />
              </span>
            </a>
            <div>
              {test.by}; {STANDS[test.stands]}
            </div>
            {test.staleBy.length > 0 && (
              <div class="fault">Stale: work was done after it on {test.staleBy.join(', ')}. Test again.</div>
            )}
          </li>
        ))}
      </ul>
    </Part>
  );
}

const STANDS: Readonly<Record<TestLine['stands'], string>> = {
  counts: 'this one counts',
  older: 'an older one',
  replaced: 'replaced by another test, and kept',
};

function TestForm(props: InsulationPageProps) {
  const { path, csrf, version, runKey, trouble, freshId, pairs, questions, say } = props;
  const entries = entriesOf(trouble, 'test', freshId);
  return (
    <Part title="New test" id="next">
      <Form
        action={path}
        csrf={csrf}
        submissionId={entries.submissionId}
        version={version}
        keep={{ label: `${runKey}, insulation test` }}
      >
        <input type="hidden" name="do" value="test" />
        <Questions questions={questions} entries={entries} say={say} />
        <Replacing {...props} entries={entries} />
        <Isolations entries={entries} />
        <Instrument {...props} entries={entries} />
        <Conditions {...props} entries={entries} />
        <h3>Readings</h3>
        <p class="hint">
          As the meter shows them; “more than” is for a reading past its range. A blank is kept as a blank and is no
          pass.
        </p>
        <div class="pairs-entry">
          {pairs.map((pair) => (
            <PairEntry key={pair} pair={pair} entries={entries} />
          ))}
        </div>
        <TextField
          {...entries.text('whyNot')}
          label="Why a pair was not measured, or what the meter did"
          need="optional"
        />
        <TextField {...entries.text('witness')} label="Witness" need="optional" />
        <TextArea {...entries.text('note')} label="Note" need="optional" rows={3} />
        <Button kind="lead">Record and judge the test</Button>
      </Form>
    </Part>
  );
}

interface WithEntries extends InsulationPageProps {
  readonly entries: Entries;
}

/** A failed test is never taken away: another one may take its place, with the cause. */
function Replacing({ tests, entries, say }: WithEntries) {
  const failed = tests.find(({ stands, verdict }) => stands === 'counts' && verdict !== 'pass');
  if (failed === undefined) return null;
  return (
    <fieldset class="fillin">
      <legend>
        The test of <Time at={new Date(failed.at)} zone={say.zone} /> did not pass
      </legend>
      <input type="hidden" name="failed" value={failed.id} />
      <TickField {...entries.tick('replaces')} label="This test takes its place; both stay in the book" />
      <TextField {...entries.text('cause')} label="What was found and put right" />
    </fieldset>
  );
}

function Isolations({ entries }: { entries: Entries }) {
  return (
    <fieldset class="fillin">
      <legend>Isolated, lifted or taken off</legend>
      <div>
        {ISOLATIONS.map((isolation) => (
          <label class="tick" key={isolation}>
            <input type="checkbox" name="isolations" value={isolation} checked={entries.has('isolations', isolation)} />
            <span>{isolation}</span>
          </label>
        ))}
      </div>
      <TextField {...entries.text('otherIsolation')} label="Anything else" need="optional" />
    </fieldset>
  );
}

function Instrument({ entries, last, rule, criteria }: WithEntries) {
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

function Conditions({ entries, path, dewPoint, length, say }: WithEntries) {
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
