import type { Activity } from '../labour/result.ts';
import type { Side, Tap } from '../model.ts';
import type { Length } from '../units/length.ts';
import type { Conductor } from './conductors.ts';
import type { Day, Instant } from './instant.ts';
import type { InsulationRule } from './insulation/criterion.ts';
import type { QuestionCode } from './insulation/questions.ts';
import type { PairReading, ResistanceUnit } from './insulation/reading.ts';

export type TorqueUnit = 'Nm' | 'lbf-ft';

export interface TorqueReading {
  readonly value: number;
  readonly unit: TorqueUnit;
  readonly toolId: string;
  readonly calibrationDue: Day;
}

/** One pole of a joint, seen seated or not at each end of the contact set: `near` towards the feed, `far` away from it. */
export interface PoleSeen {
  readonly pole: Conductor;
  readonly near: boolean;
  readonly far: boolean;
}

export type RunEnd = 'near' | 'far';

/** Activities that no state of a piece, joint, hanger or tap-off shows, so that a record has to say that they are done. */
export const REPORTED_ACTIVITIES = [
  'lay-out',
  'end-feed',
  'termination',
  'label',
  'fire-seal',
  'test-ground',
  'test-joint',
  'torque-log',
  'test-tap',
  'thermal-scan',
  'test-papers',
  'punch',
] as const satisfies readonly Activity[];
export type ReportedActivity = (typeof REPORTED_ACTIVITIES)[number];

export interface Instrument {
  readonly id: string;
  /** null: the day is not known, and then the readings are information only. */
  readonly calibrationDue: Day | null;
  readonly topRange: { readonly value: number; readonly unit: ResistanceUnit } | null;
}

export interface InsulationTestBody {
  readonly kind: 'insulation-test';
  readonly rule: InsulationRule;
  readonly testVoltageV: number;
  readonly durationS: number | null;
  readonly instrument: Instrument;
  readonly surfaceTempC: number | null;
  readonly ambientTempC: number | null;
  readonly humidityPercent: number | null;
  /** The length on the tester's sheet; the recorded length is the one that counts. */
  readonly lengthTyped: Length | null;
  readonly isolations: readonly string[];
  readonly readings: readonly PairReading[];
  readonly confirmed: readonly QuestionCode[];
  readonly witness: string | null;
  readonly note: string | null;
}

export type PieceBody =
  | { readonly kind: 'piece-on-site'; readonly lot: string | null }
  | { readonly kind: 'piece-hung'; readonly conductorSide: Side; readonly endsConfirmedBy: string | null }
  | { readonly kind: 'piece-quarantined'; readonly reason: string }
  | {
      /** One of the two signatures that release takes; each person signs under the own login. */
      readonly kind: 'piece-released';
      readonly as: 'office' | 'inspector';
      readonly reason: string;
      readonly decision: string | null;
    };

export type JointBody =
  | {
      readonly kind: 'joint-step';
      /** From 0. */
      readonly step: number;
      /** The step's words as the person saw them. */
      readonly text: string;
      readonly poles: readonly PoleSeen[] | null;
      readonly torque: TorqueReading | null;
      readonly lots: { readonly contactSet: string | null; readonly clamp: string | null } | null;
      readonly note: string | null;
    }
  | { readonly kind: 'joint-accepted'; readonly differencesRead: boolean; readonly note: string | null }
  | { readonly kind: 'joint-reopened'; readonly reason: string; readonly fromStep: number | null };

export type SupportBody =
  | {
      readonly kind: 'support-set';
      /** Distance from the feed as measured; null when set where the sheet of the run says. */
      readonly measured: Length | null;
      readonly rodPlumb: boolean;
      readonly loadNut: boolean;
      readonly lockNut: boolean;
      readonly note: string | null;
    }
  | { readonly kind: 'support-accepted'; readonly note: string | null };

export type TapBody =
  | { readonly kind: 'tap-on-site'; readonly lot: string | null }
  | {
      readonly kind: 'tap-set';
      readonly isolation: {
        readonly runIsolated: boolean;
        readonly absenceOfVoltageProved: boolean;
        readonly provedBy: string;
        readonly provedAt: Instant;
      };
      readonly device: { readonly off: boolean; readonly locked: boolean };
      /** The steps of the tap-off's own sheet, in the order done. */
      readonly steps: readonly string[];
      readonly phasesFound: Tap['phases'];
      readonly note: string | null;
    }
  | { readonly kind: 'tap-checked'; readonly note: string | null }
  | { readonly kind: 'drop-supported'; readonly distance: Length; readonly note: string | null };

export type RunBody =
  | { readonly kind: 'end-closed'; readonly end: RunEnd; readonly capFitted: boolean; readonly screwSet: boolean }
  | { readonly kind: 'end-opened'; readonly end: RunEnd; readonly reason: string }
  | { readonly kind: 'slot-closed'; readonly note: string | null }
  | { readonly kind: 'slot-opened'; readonly reason: string }
  /** `quantity` in pieces of the activity's work; null is all of the run's. */
  | {
      readonly kind: 'activity-done';
      readonly activity: ReportedActivity;
      readonly quantity: number | null;
      readonly note: string | null;
    }
  | InsulationTestBody;

/** Takes back a record that should not have been made; the cause stands in the envelope's `supersedes`. */
export interface WithdrawnBody {
  readonly kind: 'record-withdrawn';
}

export type RecordBody = PieceBody | JointBody | SupportBody | TapBody | RunBody | WithdrawnBody;
export type RecordKind = RecordBody['kind'];
