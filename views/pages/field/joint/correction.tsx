import type { CardStep } from '../../../../src/domain/quality/joint-card.ts';
import type { SiteRecord } from '../../../../src/domain/quality/record.ts';
import { Part } from '../../../components/part.tsx';
import { type Before, entriesOf } from '../entries.ts';
import type { JointPageProps } from '../joint.tsx';
import { POLE_ENDS, poleTick } from './pole-ticks.tsx';
import { StepForm } from './step-form.tsx';

export function Correction(
  props: JointPageProps & { readonly href: string; readonly step: CardStep; readonly record: SiteRecord },
) {
  const { step, record, href, joint, trouble, freshId } = props;
  return (
    <Part title={`Correct the record of step ${step.index + 1}`} id="correct">
      <p>{step.text}</p>
      <StepForm
        {...props}
        action={`${href}?correct=${record.id}`}
        version={joint.version}
        mark={joint.mark}
        entries={entriesOf(trouble, 'correct', freshId, asEntered(record))}
        usualUnit={props.say.units === 'ft-in' ? 'lbf-ft' : 'Nm'}
        corrects={{ id: record.id }}
      />
      <p>
        <a href={href}>Leave it as it is</a>
      </p>
    </Part>
  );
}

export function correctedStep({ card, correcting }: JointPageProps): CardStep | null {
  if (correcting?.body.kind !== 'joint-step') return null;
  return card.steps[correcting.body.step] ?? null;
}

/** What the record says, as the form would have sent it. */
function asEntered({ body }: SiteRecord): Before {
  if (body.kind !== 'joint-step') return {};
  const { torque, poles, lots, note } = body;
  const text = (name: string, value: string | null | undefined): Before => (value ? { [name]: [value] } : {});
  return {
    seen: (poles ?? []).flatMap((tick) => POLE_ENDS.flatMap((end) => (tick[end] ? [poleTick(tick.pole, end)] : []))),
    ...(torque === null
      ? {}
      : {
          value: [String(torque.value)],
          unit: [torque.unit],
          toolId: [torque.toolId],
          calibrationDue: [torque.calibrationDue],
        }),
    ...text('contactSetLot', lots?.contactSet),
    ...text('clampLot', lots?.clamp),
    ...text('note', note),
  };
}
