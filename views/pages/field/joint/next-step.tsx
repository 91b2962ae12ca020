import type { ComponentChildren, JSX } from 'preact';
import type { CardStep } from '../../../../src/domain/quality/joint-card.ts';
import { isHung } from '../../../../src/domain/quality/states.ts';
import { listed } from '../../../words/quality/figures.ts';
import { entriesOf } from '../entries.ts';
import type { JointPageProps } from '../joint.tsx';
import { StepForm } from './step-form.tsx';

interface StepsProps extends JointPageProps {
  readonly href: string;
}

/** The step that comes next, large, with its form; or why this person does not record it. */
export function NextStep(props: StepsProps & { readonly step: CardStep }): JSX.Element {
  const { step, card } = props;
  return (
    <section class="next-up" aria-label="Next step" id="next">
      <p class="soft">
        Step {step.index + 1} of {card.steps.length}
        {step.kind === 'hold' && ', hold point'}
        {step.kind === 'check' && ', by another person'}
      </p>
      <h2 class="large">{step.text}</h2>
      {step.kind === 'hold' && <HoldWords hasEarlier={card.steps.some(({ done }) => done !== null)} />}
      <Doing {...props} />
    </section>
  );
}

function HoldWords({ hasEarlier }: { hasEarlier: boolean }) {
  return (
    <p>
      Last chance to see it: the lower clamp hides the contact set. A pole that stands proud is not ticked; seat it
      again
      {hasEarlier && (
        <>
          , or <a href="#reopen">go back to an earlier step</a>
        </>
      )}
      .
    </p>
  );
}

function Doing(props: StepsProps & { readonly step: CardStep }): JSX.Element {
  const { step, joint, href, trouble, freshId, neighbours, viewer, say } = props;
  const loose = neighbours.filter(({ state }) => !isHung(state));
  if (loose.length > 0)
    return (
      <Waits>
        Waits for {listed(loose.map(({ mark, state }) => `${mark} (${state})`))}: hang and record it first, then the
        joint.
      </Waits>
    );
  if (step.kind === 'check' && props.card.installers.some(({ id }) => id === viewer.id)) return <ByOthers {...props} />;
  const may = step.kind === 'check' ? viewer.mayAccept || viewer.mayInstall : viewer.mayInstall;
  if (!may) return <Waits>You can read this card. An installer or a foreman records its steps.</Waits>;
  return (
    <StepForm
      {...props}
      action={href}
      version={joint.version}
      mark={joint.mark}
      entries={entriesOf(trouble, 'step', freshId)}
      usualUnit={say.units === 'ft-in' ? 'lbf-ft' : 'Nm'}
    />
  );
}

/** Who did the work sees whom to call. */
export function ByOthers({ acceptors, card }: Pick<JointPageProps, 'acceptors' | 'card'>): JSX.Element {
  const others = acceptors.filter(({ id }) => !card.installers.some((person) => person.id === id));
  return (
    <Waits>
      You did steps of this joint, so another person looks at it, under their own login.{' '}
      {others.length === 0
        ? 'Nobody of this job may do so yet: the office names a member.'
        : `Who may: ${listed(others.map(({ name, roleWord }) => `${name} (${roleWord})`))}.`}
    </Waits>
  );
}

function Waits({ children }: { children: ComponentChildren }): JSX.Element {
  return <p class="waits">{children}</p>;
}

/** The steps after the next one. */
export function LaterSteps({ card }: JointPageProps): JSX.Element | null {
  const later = card.steps.filter((step) => step.done === null && step !== card.next);
  if (later.length === 0) return null;
  return (
    <ol class="steps" aria-label="Steps after it">
      {later.map((step) => (
        <li key={step.index} value={step.index + 1} class="later">
          <div>
            {step.text}
            {step.kind === 'hold' && <strong> Hold point.</strong>}
          </div>
        </li>
      ))}
    </ol>
  );
}
