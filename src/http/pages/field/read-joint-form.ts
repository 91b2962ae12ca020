import { POLE_ENDS, poleTick } from '../../../../views/pages/field/joint/pole-ticks.tsx';
import type { RecordInput } from '../../../document/record-schema.ts';
import { CONDUCTORS } from '../../../domain/quality/conductors.ts';
import { type FieldEntries, MOST_NOTE } from './entries.ts';
import { reasonOf } from './reason.ts';
import type { BesideField } from './take-record.ts';

export const BESIDE: BesideField = {
  'joint.poles-missing': 'seen',
  'joint.torque-out': 'value',
  'joint.torque-missing': 'value',
  'joint.torque-difference-unread': 'differencesRead',
  'joint.nothing-to-reopen': 'reason',
};

export function bodyOf(does: string, entries: FieldEntries): RecordInput['body'] {
  switch (does) {
    case 'accept':
      return {
        kind: 'joint-accepted',
        differencesRead: entries.ticked('differencesRead'),
        note: entries.optional('note', MOST_NOTE),
      };
    case 'reopen':
      return {
        kind: 'joint-reopened',
        reason: reasonOf(entries, 'Say what is wrong with the joint.'),
        fromStep: Number(entries.text('fromStep')) || 0,
      };
    case 'withdraw':
      return { kind: 'record-withdrawn' };
    default:
      return stepOf(entries);
  }
}

function stepOf(entries: FieldEntries): RecordInput['body'] {
  const seen = new Set(entries.all('seen'));
  const poles = CONDUCTORS.map((pole) => {
    const [near, far] = POLE_ENDS.map((end) => seen.has(poleTick(pole, end)));
    return { pole, near: near ?? false, far: far ?? false };
  }).filter(({ near, far }) => near || far);
  const [contactSet, clamp] = [entries.optional('contactSetLot'), entries.optional('clampLot')];
  return {
    kind: 'joint-step',
    step: Number(entries.text('step')) || 0,
    text: entries.text('words'),
    poles: poles.length > 0 ? poles : null,
    torque: isTorque(entries) ? torqueOf(entries) : null,
    lots: contactSet === null && clamp === null ? null : { contactSet, clamp },
    note: entries.optional('note', MOST_NOTE),
  };
}

function isTorque(entries: FieldEntries): boolean {
  return entries.all('toolId').length > 0;
}

function torqueOf(entries: FieldEntries) {
  const value = entries.figure('value', 'Write the torque as a figure, such as 24 or 17.7.');
  if (value !== null && !(value > 0 && value <= 10_000))
    entries.fault('value', `A torque of ${value} is not one: write what the wrench was set to, above 0.`);
  const unit = entries.text('unit');
  if (unit !== 'Nm' && unit !== 'lbf-ft') entries.fault('unit', 'Choose the unit of the wrench.');
  return {
    value: value ?? 0,
    unit: unit === 'lbf-ft' ? ('lbf-ft' as const) : ('Nm' as const),
    toolId: entries.needed('toolId', 'Write the number of the torque tool.'),
    calibrationDue: entries.day('calibrationDue', 'Write the last day of its calibration, from its label.'),
  };
}

export function doneWords(does: string, entries: FieldEntries): string {
  switch (does) {
    case 'accept':
      return 'The joint is accepted.';
    case 'reopen':
      return 'The joint is reopened. What was done stays in its history.';
    case 'withdraw':
      return 'The record is taken back; both stay in the history.';
    default:
      return `Step ${Number(entries.text('step')) + 1} is recorded.`;
  }
}
