import type { ThreePoint } from '../model.ts';
import type { Length } from '../units/length.ts';

export const ACTIVITIES = [
  'handle-section',
  'handle-tap',
  'lay-out',
  'support',
  'section',
  'joint',
  'elbow',
  'tee',
  'end-feed',
  'termination',
  'end-cap',
  'slot-closure',
  'tap',
  'drop',
  'label',
  'fire-seal',
  'test-insulation',
  'test-ground',
  'test-joint',
  'torque-log',
  'test-tap',
  'thermal-scan',
  'test-papers',
  'punch',
] as const;
export type Activity = (typeof ACTIVITIES)[number];

/** What a line of hours can be of: an activity, or work that the estimator added by hand. */
export const LINE_ACTIVITIES = [...ACTIVITIES, 'extra'] as const;
export type LineActivity = (typeof LINE_ACTIVITIES)[number];

/**
 * One line of the reckoning: activity x run (x length band), with everything that went into its hours:
 * `hours = quantity x base x conditionFactor x learningFactor x (1 + nonProductive)`.
 */
export interface LabourLine {
  /** One of ACTIVITIES, or 'extra' for hours the estimator added by hand. */
  readonly activity: Activity | 'extra';
  readonly note: string | null;
  readonly run: string | null;
  readonly level: string | null;
  /** Length of each piece: sections and drops stand apart by length; null for work that has none. */
  readonly length: Length | null;
  /** How many pieces of work the line covers (4 sections, 20 tap-offs, 1 run): `hours / pieces` is one piece's budget. */
  readonly pieces: number;
  /** In the activity's own unit (0.7 of "100 ft"). */
  readonly quantity: number;
  readonly unit: string;
  readonly base: ThreePoint;
  readonly factors: readonly { readonly name: string; readonly percent: number }[];
  readonly conditionFactor: number;
  readonly repeat: number | null;
  readonly learningFactor: number;
  readonly nonProductiveFactor: number;
  /** Likely hours with everything in. */
  readonly hours: number;
}

export interface LabourRange {
  readonly likely: number;
  readonly mean: number;
  readonly sd: number;
  readonly p10: number;
  readonly p50: number;
  readonly p80: number;
  readonly p90: number;
}

/** Parts sum to the whole: `byActivity`, `byLevel` and `byRun` each add up to `range.likely` (extras without a level or run apart). */
export interface Labour {
  readonly lines: readonly LabourLine[];
  readonly range: LabourRange;
  readonly byActivity: readonly {
    readonly activity: Activity | 'extra';
    readonly quantity: number;
    readonly hours: number;
  }[];
  readonly byLevel: readonly { readonly level: string; readonly hours: number }[];
  readonly byRun: readonly { readonly run: string; readonly hours: number }[];
  /** Minor units per productive hour: sum(n x rate) / sum(n x effectiveness); null without a crew. Money: office only. */
  readonly costPerProductiveHour: number | null;
}
