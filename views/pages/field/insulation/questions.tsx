import type { JSX } from 'preact';
import type { Question } from '../../../../src/domain/quality/insulation/questions.ts';
import { questionWords, type Speech } from '../../../words/quality.ts';
import type { Entries } from '../entries.ts';
import { FaultText } from '../fault-text.tsx';
import { whole } from '../told-text.ts';

/** Doubtful figures: each is corrected below, or confirmed here as it stands. */
export function Questions(props: {
  questions: readonly Question[];
  entries: Entries;
  say: Speech;
}): JSX.Element | null {
  const { questions, entries, say } = props;
  if (questions.length === 0) return null;
  return (
    <fieldset class="fillin faults">
      <legend>Look at these again</legend>
      {questions.map((question) => (
        <div key={question.code} class="stack">
          <FaultText>{whole(questionWords(question, say))}</FaultText>
          <label class="tick">
            <input
              type="checkbox"
              name="confirmed"
              value={question.code}
              checked={entries.has('confirmed', question.code)}
            />
            <span>It stands as written</span>
          </label>
        </div>
      ))}
    </fieldset>
  );
}
