import type { JSX } from 'preact';
import type { StepDone } from '../../../../src/domain/quality/joint-card.ts';
import { Mark } from '../../../components/mark.tsx';
import { Time } from '../../../components/time.tsx';
import { stepRemarks } from '../../../words/record-summary.ts';
import type { JointPageProps } from '../joint.tsx';

/** The steps that are done, with who and when; folded, so that the next one is in sight. */
export function DoneSteps({ card, say }: JointPageProps): JSX.Element | null {
  const done = card.steps.flatMap((step) => (step.done === null ? [] : [{ ...step, done: step.done }]));
  const last = done.at(-1);
  if (last === undefined) return null;
  return (
    <details class="done-steps" open={card.state === 'accepted'}>
      <summary>
        {done.length === 1 ? 'Step 1 done' : `Steps 1 to ${last.index + 1} done`}, last by{' '}
        <Who done={last.done} zone={say.zone} />
      </summary>
      <ol class="steps" aria-label="Steps done">
        {done.map((step) => (
          <li key={step.index} value={step.index + 1} class="done">
            <div>
              <div>{step.text}</div>
              <div class="row">
                <Mark state="accepted" word="done" />
                <span class="hint">
                  <Who done={step.done} zone={say.zone} />
                </span>
              </div>
              <div class="hint">{stepRemarks(step.done.body)}</div>
            </div>
          </li>
        ))}
      </ol>
    </details>
  );
}

function Who({ done, zone }: { done: StepDone; zone: string | null }) {
  return (
    <>
      {done.by.name}, <Time at={new Date(done.at)} zone={zone} />
    </>
  );
}
