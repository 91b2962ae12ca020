import type { JSX } from 'preact';
import { Sign } from '../../components/sign.tsx';
import { runEntryWord } from '../../words/run-entries.ts';
import type { SheetFault } from '../run-edit.tsx';

/** Figures that may not be what was meant: saved as typed when the form is sent once more. */
export function Questions(props: {
  readonly questions: readonly { readonly field: string; readonly said: string }[];
  readonly tapQuestions: readonly SheetFault[];
}): JSX.Element | null {
  const { questions, tapQuestions } = props;
  if (questions.length + tapQuestions.length === 0) return null;
  return (
    <div class="faults asked" role="alert" tabIndex={-1}>
      <h2>
        <Sign of="warning" /> Worth a second look; nothing was saved yet
      </h2>
      <ul>
        {questions.map(({ field, said }) => (
          <li key={field}>
            <a href={`#f-${field.replace(/[^A-Za-z0-9_-]/g, '-')}`}>{runEntryWord(field)}</a>: {said}
          </li>
        ))}
        {tapQuestions.map((fault) => (
          <li key={`${fault.row} ${fault.column}`}>
            <a href="#f-taps">Tap-offs, row {fault.row}</a>, {fault.column}: {fault.problem} {fault.remedy}
          </li>
        ))}
      </ul>
      <p>Correct what was meant otherwise. Saving again takes the rest as typed.</p>
    </div>
  );
}
