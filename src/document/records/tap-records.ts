import { z } from 'zod';
import { distanceMm, name, text } from '../schema/fields.ts';
import { PHASE_SETS } from '../schema/tap.ts';
import { at, optionalNote, optionalText, ticked } from './record-fields.ts';

export const tapOnSite = z.strictObject({ kind: z.literal('tap-on-site'), lot: optionalText('Lot or crate') });

export const tapSet = z.strictObject({
  kind: z.literal('tap-set'),
  isolation: z.strictObject({
    runIsolated: ticked('Run isolated'),
    absenceOfVoltageProved: ticked('Absence of voltage proved, tester proved before and after'),
    provedBy: name('Who proved it').min(1),
    provedAt: at('When it was proved'),
  }),
  device: z.strictObject({ off: ticked('Device off'), locked: ticked('Device locked') }),
  steps: z.array(text("A step of the tap-off's own sheet").min(1)).max(40).describe('Steps done, in order'),
  phasesFound: z.enum(PHASE_SETS).describe('Phases as found on the tap-off'),
  note: optionalNote,
});

export const dropSupported = z.strictObject({
  kind: z.literal('drop-supported'),
  distanceMm: distanceMm('From the tap-off to the first tension take-up support, along the cord, mm'),
  note: optionalNote,
});

export const tapChecked = z.strictObject({ kind: z.literal('tap-checked'), note: optionalNote });
