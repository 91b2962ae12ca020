export const PIECE_STATES = ['planned', 'on-site', 'quarantined', 'hung', 'joined', 'accepted'] as const;
export type PieceState = (typeof PIECE_STATES)[number];

export const JOINT_STATES = ['open', 'seated', 'closed', 'accepted', 'reopened'] as const;
export type JointState = (typeof JOINT_STATES)[number];

export const SUPPORT_STATES = ['planned', 'set', 'accepted'] as const;
export type SupportState = (typeof SUPPORT_STATES)[number];

export const TAP_STATES = ['planned', 'on-site', 'set', 'checked', 'in-service', 'removed'] as const;
export type TapState = (typeof TAP_STATES)[number];

/** A piece that is up, whatever came after. */
export function isHung(state: string): boolean {
  return state === 'hung' || state === 'joined' || state === 'accepted';
}
