import type { JointState, PieceState, SupportState, TapState } from '../../src/domain/quality/states.ts';

/** How far along a thing is, as pages and drawings say it. Each state has one ink and one word, the same everywhere. */
export type WorkState = PieceState | JointState | SupportState | TapState | 'fault';

/** Ink, not colour: dashed outline, thin outline, firm outline, half filled, solid; and three for what went wrong or away. */
export type Ink = 'dashed' | 'thin' | 'firm' | 'half' | 'solid' | 'crossed' | 'diagonal' | 'struck';

interface StateLook {
  readonly ink: Ink;
  readonly word: string;
}

const LOOKS: Readonly<Record<WorkState, StateLook>> = {
  planned: { ink: 'dashed', word: 'planned' },
  'on-site': { ink: 'thin', word: 'on site' },
  hung: { ink: 'firm', word: 'hung' },
  joined: { ink: 'half', word: 'joined' },
  accepted: { ink: 'solid', word: 'accepted' },
  quarantined: { ink: 'diagonal', word: 'quarantined' },
  open: { ink: 'dashed', word: 'open' },
  seated: { ink: 'firm', word: 'seated' },
  closed: { ink: 'half', word: 'closed' },
  reopened: { ink: 'crossed', word: 'reopened' },
  set: { ink: 'firm', word: 'set' },
  checked: { ink: 'half', word: 'checked' },
  'in-service': { ink: 'solid', word: 'in service' },
  removed: { ink: 'struck', word: 'removed' },
  fault: { ink: 'crossed', word: 'fault' },
};

/** In order of progress, so that legends and tests walk the same lists. */
export const STATES = {
  piece: ['planned', 'on-site', 'hung', 'joined', 'accepted', 'quarantined', 'fault'],
  joint: ['open', 'seated', 'closed', 'accepted', 'reopened'],
  support: ['planned', 'set', 'accepted', 'fault'],
  tap: ['planned', 'on-site', 'set', 'checked', 'in-service', 'removed', 'fault'],
} as const satisfies Readonly<Record<string, readonly WorkState[]>>;

export function lookOf(state: WorkState): StateLook {
  return LOOKS[state];
}
