import { Button } from '../../../components/button.tsx';
import { TextArea, TextField, TickField } from '../../../components/field.tsx';
import { Form } from '../../../components/form.tsx';
import { Part } from '../../../components/part.tsx';
import { Time } from '../../../components/time.tsx';
import { entriesOf } from '../entries.ts';
import type { InsulationPageProps } from '../insulation.tsx';
import { Isolations } from './isolations.tsx';
import { PairEntry } from './pair-entry.tsx';
import { Questions } from './questions.tsx';
import { Conditions, Instrument, type WithEntries } from './sheet-fields.tsx';

export function TestForm(props: InsulationPageProps) {
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
