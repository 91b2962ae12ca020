import { z } from 'zod';
import { amperes, clearanceMm, coordinateMm, distanceMm, kiloamperes, label, text, weightKg } from './fields.ts';

export const PHASE_SETS = ['L1', 'L2', 'L3', 'L1-L2', 'L2-L3', 'L3-L1', 'L1-L2-L3'] as const;

export const tapSchema = z
  .strictObject({
    id: label('The tap, unique within its run'),
    atMm: distanceMm("Distance of the tap's centre from the feed, mm").optional(),
    near: z
      .strictObject({ xMm: coordinateMm('East of the origin, mm'), yMm: coordinateMm('North of the origin, mm') })
      .describe('Plan position of what the tap serves; the tap stands at the nearest point of the run')
      .optional(),
    fixed: z.boolean().describe('The tap may not move, so joints keep out of its clearance').optional(),
    phases: z.enum(PHASE_SETS).describe('Phases that the tap connects'),
    neutral: z.boolean().describe('The tap connects the neutral; true for one pole when absent').optional(),
    deviceA: amperes('Rating of the protective device, A'),
    interruptingKA: kiloamperes('Interrupting rating of the device, kA').optional(),
    loadVA: z
      .number()
      .min(0)
      .max(100_000_000)
      .describe('Load, VA: line to neutral, line to line or the three-phase total')
      .optional(),
    loadA: z.number().min(0).max(100_000).describe('Load, A: fundamental current in each phase').optional(),
    powerFactor: z.number().gt(0).max(1).describe('Power factor, lagging; 1 when absent').optional(),
    continuous: z.boolean().describe('The load runs three hours or more; true when absent').optional(),
    thirdHarmonic: z.number().min(0).max(1).describe('Third harmonic as a fraction of the fundamental').optional(),
    movablePhase: z.boolean().describe('The phase may be changed to balance the run').optional(),
    serves: text('The equipment served').optional(),
    pair: text("Label shared with the same equipment's tap on the other side").min(1).optional(),
    dropMm: clearanceMm('Length of the drop, mm').optional(),
    weightKg: weightKg('Weight of the box and what hangs from it, kg').optional(),
  })
  .meta({
    id: 'Tap',
    description: 'A tap-off: place, phases, device and load. It has either `atMm` or `near`, and `loadVA` or `loadA`.',
    allOf: [
      { oneOf: [{ required: ['atMm'] }, { required: ['near'] }] },
      { oneOf: [{ required: ['loadVA'] }, { required: ['loadA'] }] },
    ],
  });

export type TapDocument = z.infer<typeof tapSchema>;
