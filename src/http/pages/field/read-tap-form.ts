import type { TapCardView } from '../../../actions/cards.ts';
import type { RecordInput } from '../../../document/record-schema.ts';
import { PHASE_SETS } from '../../../document/schema/tap.ts';
import { DISTANCE } from '../../../domain/units/parse-length.ts';
import { type FieldEntries, MOST_NOTE } from './entries.ts';
import type { BesideField } from './take-record.ts';

export const DONE: Readonly<Record<string, string>> = {
  'on-site': 'It is on site.',
  set: 'It is set.',
  drop: 'Its drop is supported.',
  check: 'It is checked.',
  withdraw: 'The record is taken back; both stay in the history.',
};

export const BESIDE: BesideField = {
  'tap.not-isolated': 'absenceProved',
  'tap.proved-after': 'provedAt',
  'tap.device-not-locked': 'deviceLocked',
  'tap.no-steps': 'steps',
  'tap.phases-differ': 'phases',
  'tap.drop-too-far': 'distance',
};

export function bodyOf(does: string, entries: FieldEntries, view: TapCardView): RecordInput['body'] {
  const { units } = view.at.floor.project.document;
  switch (does) {
    case 'on-site':
      return { kind: 'tap-on-site', lot: entries.optional('lot') };
    case 'check':
      return { kind: 'tap-checked', note: entries.optional('note', MOST_NOTE) };
    case 'drop':
      return {
        kind: 'drop-supported',
        distanceMm: distanceOf(entries, units),
        note: entries.optional('note', MOST_NOTE),
      };
    case 'withdraw':
      return { kind: 'record-withdrawn' };
    default:
      return setBody(entries, view);
  }
}

function distanceOf(entries: FieldEntries, units: 'ft-in' | 'metric'): number {
  const distance = entries.lengthMm('distance', units, DISTANCE);
  if (distance === null) entries.fault('distance', 'Measure from the tap-off to the first support and write it here.');
  return distance ?? 0;
}

function setBody(entries: FieldEntries, { at }: TapCardView): RecordInput['body'] {
  const zone = at.floor.project.document.timeZone ?? null;
  const more = entries.text('moreSteps').split('\n');
  const steps = [...entries.all('steps'), ...more].map((step) => step.trim()).filter((step) => step !== '');
  if (steps.length > 40) entries.fault('moreSteps', `${steps.length} steps are too many: 40 are kept.`);
  if (steps.some((step) => step.length > 200)) entries.fault('moreSteps', 'One step a line, 200 signs at most each.');
  const phases = PHASE_SETS.find((set) => set === entries.text('phases'));
  if (phases === undefined) entries.fault('phases', 'Read the phases off the box in your hand and choose them.');
  return {
    kind: 'tap-set',
    isolation: {
      runIsolated: entries.ticked('runIsolated'),
      absenceOfVoltageProved: entries.ticked('absenceProved'),
      provedBy: entries.needed('provedBy', 'Write who proved it.'),
      provedAt: entries.moment('provedAt', zone, 'Write the day and the time when it was proved.'),
    },
    device: { off: entries.ticked('deviceOff'), locked: entries.ticked('deviceLocked') },
    steps: steps.map((step) => step.replaceAll('\n', ' ')),
    phasesFound: phases ?? 'L1',
    note: entries.optional('note', MOST_NOTE),
  };
}
