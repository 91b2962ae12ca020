import type { StepBody, StepDone } from './joint-card.ts';
import type { JointSheet, JointStep } from './joint-sheet.ts';
import type { Person } from './record.ts';
import type { JointRefusal } from './refusal.ts';
import { judgeTorque } from './torque.ts';

/**
 * Why a step cannot be credited on a card where `done` stands already; null when it can. Order first, then what the step
 * itself asks: every pole seen at both ends at a hold point, a torque the sheet allows, another person for a check.
 */
export function stepFault(
  sheet: JointSheet,
  done: readonly (StepDone | null)[],
  body: StepBody,
  by: Person,
): JointRefusal | null {
  if (sheet.steps === null) return { code: 'joint.no-step-list', args: {} };
  const step = sheet.steps[body.step];
  if (step === undefined)
    return { code: 'joint.unknown-step', args: { step: body.step + 1, steps: sheet.steps.length } };
  return (
    wordsFault(step, body) ??
    orderFault(sheet.steps, done, step) ??
    polesFault(sheet, step, body) ??
    torqueFault(sheet, step, body) ??
    checkFault(sheet.steps, done, step, by)
  );
}

function wordsFault({ index, text }: JointStep, body: StepBody): JointRefusal | null {
  if (sameWords(text, body.text)) return null;
  return { code: 'joint.sheet-changed', args: { step: index + 1, shown: body.text, now: text } };
}

function sameWords(a: string, b: string): boolean {
  const bare = (text: string) =>
    text
      .replace(/^\s*(?:HOLD|TORQUE|CHECK)\s*:\s*/i, '')
      .replace(/\s+/g, ' ')
      .trim();
  return bare(a) === bare(b);
}

function orderFault(
  steps: readonly JointStep[],
  done: readonly (StepDone | null)[],
  step: JointStep,
): JointRefusal | null {
  const already = done[step.index];
  if (already)
    return {
      code: 'joint.step-done',
      args: { step: step.index + 1, text: step.text, by: already.by.name, at: already.at },
    };
  const earlier = steps.slice(0, step.index).filter((candidate) => !done[candidate.index]);
  const [next] = earlier;
  if (next === undefined) return null;
  const here = { step: step.index + 1, text: step.text };
  const hold = earlier.find((candidate) => candidate.kind === 'hold');
  // The lower clamp hides the blades: past an unseen hold point is told as just that, whatever else is open before it.
  if (hold) return { code: 'joint.hold-first', args: { ...here, hold: hold.index + 1, holdText: hold.text } };
  return { code: 'joint.out-of-order', args: { ...here, next: next.index + 1, nextText: next.text } };
}

function polesFault(sheet: JointSheet, { index, kind }: JointStep, { poles }: StepBody): JointRefusal | null {
  const foreign = poles?.find(({ pole }) => !sheet.poles.includes(pole));
  if (foreign) return { code: 'joint.pole-unknown', args: { pole: foreign.pole } };
  if (kind !== 'hold') return null;
  const missing = sheet.poles.flatMap((pole) => {
    const seen = poles?.find((tick) => tick.pole === pole);
    return [...(seen?.near ? [] : [`${pole} near end`]), ...(seen?.far ? [] : [`${pole} far end`])];
  });
  if (missing.length === 0) return null;
  return { code: 'joint.poles-missing', args: { step: index + 1, missing, of: 2 * sheet.poles.length } };
}

function torqueFault(sheet: JointSheet, { index, kind, text }: JointStep, { torque }: StepBody): JointRefusal | null {
  if (torque === null)
    return kind === 'torque' ? { code: 'joint.torque-missing', args: { step: index + 1, text } } : null;
  const { verdict, appliedNm, statedNm, leastNm, greatestNm } = judgeTorque(torque, text, sheet.torqueNm);
  if (verdict !== 'outside' || statedNm === null || leastNm === null || greatestNm === null) return null;
  return { code: 'joint.torque-out', args: { step: index + 1, appliedNm, statedNm, leastNm, greatestNm } };
}

function checkFault(
  steps: readonly JointStep[],
  done: readonly (StepDone | null)[],
  { index, kind, text }: JointStep,
  by: Person,
): JointRefusal | null {
  if (kind !== 'check') return null;
  const installed = steps.some((step) => step.kind !== 'check' && done[step.index]?.by.id === by.id);
  return installed ? { code: 'joint.check-own-work', args: { name: by.name, step: index + 1, text } } : null;
}
