import type { Length } from '../units/length.ts';

export type TakeoffItem =
  | 'section'
  | 'elbow'
  | 'tee'
  | 'clamp'
  | 'contact-set'
  | 'bolt'
  | 'end-feed'
  | 'end-cap'
  | 'slot-closure'
  | 'support'
  | 'rod'
  | 'rod-stock'
  | 'anchor'
  | 'nut'
  | 'fire-seal'
  | 'tap'
  | 'drop'
  | 'label'
  | 'extra';

/** One counted line. `places` are the distances along the run it was counted from, so that a line can be opened. */
export interface TakeoffLine {
  readonly item: TakeoffItem;
  readonly kind: string | null;
  readonly hand: string | null;
  readonly length: Length | null;
  readonly type: string | null;
  readonly run: string | null;
  readonly level: string | null;
  readonly quantity: number;
  readonly unit: string;
  readonly places: readonly Length[];
}
