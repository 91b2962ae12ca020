import type { Activity } from '../labour/result.ts';
import type { TakeoffItem } from '../takeoff/result.ts';
import type { Length } from '../units/length.ts';

/** What can be ordered: everything that is counted, and two things that follow from the hangers by a rule of the job. */
export type OrderItem = TakeoffItem | 'washer' | 'brace';

export const ORDER_ITEMS = [
  'section',
  'elbow',
  'tee',
  'clamp',
  'contact-set',
  'bolt',
  'end-feed',
  'end-cap',
  'slot-closure',
  'support',
  'rod',
  'rod-stock',
  'nut',
  'washer',
  'brace',
  'anchor',
  'fire-seal',
  'tap',
  'drop',
  'label',
  'extra',
] as const satisfies readonly OrderItem[];

/** The job's own rules for ordering; what nobody has stated is `null` or an empty list, never a figure of ours. */
export interface Ordering {
  readonly spares: readonly SpareRule[];
  /** Calendar days from placing the order to the goods on the floor. */
  readonly leadDays: ReadonlyMap<OrderItem, number>;
  /** Which of the two crew plans the need dates are taken from. */
  readonly plan: 'continuous' | 'earliest';
  /** Lengths that cords are made in, shortest first, without repeats. */
  readonly cordStock: readonly Length[];
  readonly closure: { readonly stock: Length; readonly wastePercent: number } | null;
  readonly washersPerRod: number | null;
  /** One brace for so many hangers of a run, or part of them. */
  readonly braceEverySupports: number | null;
  /** null: nobody has stated any. */
  readonly tools: readonly CrewTool[] | null;
}

/** The first rule that fits a thing is its rule. A property that a rule leaves open (`null`) fits everything. */
export interface SpareRule {
  readonly item: OrderItem;
  readonly type: string | null;
  readonly kind: string | null;
  readonly hand: string | null;
  readonly length: Length | null;
  readonly wastePercent: number;
  readonly percent: number;
  readonly minimum: number;
  readonly ownerSpares: number;
}

export interface CrewTool {
  readonly tool: string;
  readonly perCrew: number;
  /** Only crews that do this work need it; null: every crew. */
  readonly activity: Activity | null;
  /** How many crews, by hand; null: as the crew plan has them. */
  readonly crews: number | null;
  readonly note: string | null;
}
