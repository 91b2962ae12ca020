import type { RecordBody, RunEnd } from '../../src/domain/quality/record.ts';
import { torqueNm } from '../../src/domain/quality/torque.ts';
import { activityWord } from './activities.ts';
import { long, quoted, time, torque } from './quality/figures.ts';
import { ruleWord } from './quality/insulation-words.ts';
import type { Speech } from './quality/told.ts';

/** What a record says, in one line: `step 5: 24.0 N·m (17.7 lbf·ft) with T-07, in calibration until 2026-06-01`. */
export function recordSummary(body: RecordBody, say: Speech): string {
  switch (body.kind) {
    case 'piece-on-site':
    case 'tap-on-site':
      return body.lot === null ? 'on site' : `on site, lot ${body.lot}`;
    case 'piece-hung':
      return sentence(`hung, conductors on the ${body.conductorSide}`, second(body.endsConfirmedBy));
    case 'piece-quarantined':
      return `in quarantine: ${quoted(body.reason)}`;
    case 'piece-released':
      return sentence(`signed for release as ${body.as}: ${quoted(body.reason)}`, body.decision);
    case 'joint-step':
      return sentence(`step ${body.step + 1}: ${body.text.replace(/\.$/, '')}`, ...stepDetails(body), noted(body.note));
    case 'joint-accepted':
      return sentence('joint accepted', body.differencesRead ? 'differences of torque read' : null, noted(body.note));
    case 'joint-reopened':
      return sentence(`reopened from step ${(body.fromStep ?? 0) + 1} on`, quoted(body.reason));
    case 'support-set':
      return sentence(
        body.measured === null ? 'set as planned' : `set, measured at ${long(body.measured, say)}`,
        noted(body.note),
      );
    case 'support-accepted':
      return sentence('hanger accepted', noted(body.note));
    case 'tap-set':
      return sentence(
        `set on ${body.phasesFound}`,
        `absence of voltage proved by ${body.isolation.provedBy}, ${time(body.isolation.provedAt, say)}`,
        'device off and locked',
        `${body.steps.length} steps of its sheet`,
        noted(body.note),
      );
    case 'tap-checked':
      return sentence('tap-off checked', noted(body.note));
    case 'drop-supported':
      return sentence(`drop supported ${long(body.distance, say)} from the tap-off`, noted(body.note));
    case 'end-closed':
      return `${endWord(body.end)} closed: cap fitted, screw set`;
    case 'end-opened':
      return `${endWord(body.end)} opened: ${quoted(body.reason)}`;
    case 'slot-closed':
      return sentence('slot closed', noted(body.note));
    case 'slot-opened':
      return `slot opened: ${quoted(body.reason)}`;
    case 'activity-done':
      return sentence(
        `${activityWord(body.activity)}: ${body.quantity === null ? 'all of the run' : `${body.quantity} done`}`,
        noted(body.note),
      );
    case 'insulation-test':
      return sentence(
        `${body.readings.length} pairs at ${body.testVoltageV} V DC`,
        ruleWord(body.rule),
        `with ${body.instrument.id}`,
        noted(body.note),
      );
    case 'record-withdrawn':
      return 'a record is taken back';
  }
}

export function endWord(end: RunEnd): string {
  return `${end} end`;
}

type Step = Extract<RecordBody, { readonly kind: 'joint-step' }>;

/** What a step says beside being done, in one line; empty when it says nothing more. */
export function stepRemarks(body: Step): string {
  return sentence(...stepDetails(body), noted(body.note));
}

function stepDetails({ torque: applied, poles, lots }: Step): (string | null)[] {
  const ends = poles?.reduce((sum, pole) => sum + Number(pole.near) + Number(pole.far), 0) ?? 0;
  return [
    ends > 0 ? `${ends} pole ends seen seated` : null,
    applied === null
      ? null
      : `${torque(torqueNm(applied))} with ${applied.toolId}, in calibration until ${applied.calibrationDue}`,
    lots?.contactSet ? `contact set lot ${lots.contactSet}` : null,
    lots?.clamp ? `clamp lot ${lots.clamp}` : null,
  ];
}

function second(name: string | null): string | null {
  return name === null ? null : `both ends seen by ${name} too`;
}

function noted(note: string | null): string | null {
  return note === null || note === '' ? null : quoted(note);
}

function sentence(...parts: readonly (string | null)[]): string {
  return parts.filter((part) => part !== null && part !== '').join('; ');
}
