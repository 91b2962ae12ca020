import type { BuswayType } from '../model.ts';
import { type Conductor, polesOf } from './conductors.ts';
import type { Remark } from './remark.ts';

/**
 * What a step asks beyond being done: `hold` the seating seen pole by pole before the lower clamp hides it, `torque` a value
 * with tool and calibration, `check` another person than the installer.
 */
export type StepKind = 'work' | 'hold' | 'torque' | 'check';

export interface JointStep {
  /** From 0. */
  readonly index: number;
  /** The sheet's words without the marking. */
  readonly text: string;
  readonly kind: StepKind;
}

/** The make-up of a type's joint, as its sheet orders it. */
export interface JointSheet {
  /** null: the sheet names no steps, and no joint of the type can be accepted. */
  readonly steps: readonly JointStep[] | null;
  readonly poles: readonly Conductor[];
  readonly torqueNm: number | null;
  readonly remarks: readonly Remark[];
}

/**
 * Reads the type's step list. A step that begins with `HOLD:`, `TORQUE:` or `CHECK:` asks for what its marking says. Where no
 * step is marked HOLD, the first whose words say that the seating was seen is the hold point; where none does, the card works
 * in order and says that the sheet names no hold point.
 *
 * Example: `HOLD: every pole seen seated` is a `hold` with the text `every pole seen seated`.
 */
export function jointSheet(type: Pick<BuswayType, 'joint' | 'poles' | 'neutral'>): JointSheet {
  const poles = polesOf(type);
  const { torqueNm, steps: list } = type.joint;
  if (list === null || list.length === 0) return { steps: null, poles, torqueNm, remarks: [] };
  const marked = list.map(readStep);
  const { steps, remarks } = withHold(marked);
  const silent = torqueNm !== null && !steps.some((step) => step.kind === 'torque');
  const torqueRemark: Remark[] = silent ? [{ code: 'sheet.torque-without-step', args: { torqueNm } }] : [];
  return { steps, poles, torqueNm, remarks: [...remarks, ...torqueRemark] };
}

const MARKINGS: readonly { readonly marking: RegExp; readonly kind: StepKind }[] = [
  { marking: /^\s*HOLD\s*:\s*/i, kind: 'hold' },
  { marking: /^\s*TORQUE\s*:\s*/i, kind: 'torque' },
  { marking: /^\s*CHECK\s*:\s*/i, kind: 'check' },
];

function readStep(line: string, index: number): JointStep {
  const found = MARKINGS.find(({ marking }) => marking.test(line));
  if (found === undefined) return { index, text: line.trim(), kind: 'work' };
  return { index, text: line.replace(found.marking, '').trim(), kind: found.kind };
}

const SEATING = /\bseat(?:s|ed|ing)?\b/i;
const SEEN =
  /\b(?:seen|see|sight(?:ed)?|visibl[ey]|visual(?:ly)?|look(?:ed)?|inspect(?:ed)?|gaug(?:e|ed)|verif(?:y|ied)|confirm(?:ed)?)\b/i;

function withHold(steps: readonly JointStep[]): { steps: readonly JointStep[]; remarks: readonly Remark[] } {
  if (steps.some((step) => step.kind === 'hold')) return { steps, remarks: [] };
  const worded = steps.find((step) => step.kind === 'work' && SEATING.test(step.text) && SEEN.test(step.text));
  if (worded === undefined) return { steps, remarks: [{ code: 'sheet.no-hold', args: {} }] };
  const held = steps.map((step) => (step === worded ? { ...step, kind: 'hold' as const } : step));
  return {
    steps: held,
    remarks: [{ code: 'sheet.hold-from-words', args: { step: worded.index + 1, text: worded.text } }],
  };
}
