import type { JSX } from 'preact';
import { Button } from '../components/button.tsx';
import { DataTable } from '../components/data-table.tsx';
import { EmptyState } from '../components/empty-state.tsx';
import { Form } from '../components/form.tsx';
import { Time } from '../components/time.tsx';

export interface StepRow {
  readonly id: string;
  readonly seq: number;
  readonly action: string;
  readonly byName: string;
  readonly at: string;
  readonly touches: readonly string[];
  readonly undone: boolean;
  readonly undoes: string | null;
  readonly canUndo: boolean;
}

export interface DesignStepsProps {
  readonly steps: readonly StepRow[];
  /** Where an undo is posted to, by the step. */
  readonly undoHref: (id: string) => string;
  readonly csrf: string;
  readonly newId: () => string;
  readonly zone: string | undefined;
}

/** Every change of the design, newest first; each can be taken back while nobody has changed the same thing since. */
export function DesignSteps(props: DesignStepsProps): JSX.Element {
  const { steps, undoHref, csrf, newId, zone } = props;
  return (
    <>
      <p>
        Undo takes back what one change did to the design. It is refused where the same thing was changed since. What
        the floor has stays as released until the next release. A new job is no step, and a change of more than 8 MB
        cannot be undone.
      </p>
      <DataTable
        caption="Changes of the design"
        remark="newest first, the last hundred"
        rows={steps}
        keyOf={(step) => step.id}
        none={<EmptyState text="The design has not changed since the job was made." />}
        columns={[
          { head: 'What', kind: 'name', cell: (step) => actionWord(step.action) },
          { head: 'Touched', cell: (step) => touched(step.touches) },
          { head: 'By', cell: (step) => step.byName },
          { head: 'When', cell: (step) => <Time at={new Date(step.at)} zone={zone} /> },
          {
            head: 'Undo',
            cell: (step) =>
              step.canUndo ? (
                <Form action={undoHref(step.id)} csrf={csrf} submissionId={newId()}>
                  <Button kind="plain">{step.undoes === null ? 'Undo' : 'Do again'}</Button>
                </Form>
              ) : (
                <span class="soft">{step.undone ? 'settled' : 'too large'}</span>
              ),
          },
        ]}
      />
    </>
  );
}

/** The two buttons beside a thing: the last step that stands, and the last that was taken back. */
export function UndoButtons(props: {
  readonly undo: StepRow | null;
  readonly redo: StepRow | null;
  readonly undoHref: (id: string) => string;
  readonly stepsHref: string;
  readonly csrf: string;
  readonly newId: () => string;
  readonly zone: string | undefined;
}): JSX.Element | null {
  const { undo, redo, undoHref, stepsHref, csrf, newId, zone } = props;
  if (undo === null && redo === null) return null;
  const button = (word: string, step: StepRow) => (
    <Form action={undoHref(step.id)} csrf={csrf} submissionId={newId()}>
      <div class="row">
        {step.canUndo && <Button kind="plain">{word}</Button>}
        <span class="soft">
          {actionWord(step.action)}, {step.byName}, <Time at={new Date(step.at)} zone={zone} />
          {step.canUndo ? '' : ': too large to be undone'}
        </span>
      </div>
    </Form>
  );
  return (
    <div class="stack">
      {undo !== null && button('Undo', undo)}
      {redo !== null && button('Do again', redo)}
      <p>
        <a href={stepsHref}>All changes of the design</a>
      </p>
    </div>
  );
}

/** The step's own names in the history are said as what was done. */
function actionWord(action: string): string {
  if (action === 'design step undone') return 'change undone';
  return action === 'design step done again' ? 'change done again' : action;
}

function touched(touches: readonly string[]): string {
  const shown = touches.slice(0, 4).join(', ');
  return touches.length > 4 ? `${shown} and ${touches.length - 4} more` : shown;
}
