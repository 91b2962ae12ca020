import type { Length } from '../units/length.ts';
import { type SiteRecord, type Stamp, stampOf } from './record.ts';
import { type StandingRecord, standingRecords } from './standing-records.ts';
import type { TapState } from './states.ts';

/** One tap-off as its records tell it. `in-service` and `removed` come from the owner's tap changes, not from these records. */
export interface TapCard {
  readonly records: readonly SiteRecord[];
  readonly state: Extract<TapState, 'planned' | 'on-site' | 'set' | 'checked'>;
  readonly onSite: Stamp | null;
  readonly set: Stamp | null;
  readonly checked: Stamp | null;
  readonly dropSupported: (Stamp & { readonly distance: Length }) | null;
}

/** Folds the records of one tap-off: planned, on site, set, checked, with its drop supported or not. */
export function tapCard(records: readonly SiteRecord[]): TapCard {
  const empty: TapCard = { records, state: 'planned', onSite: null, set: null, checked: null, dropSupported: null };
  return standingRecords(records).reduce(apply, empty);
}

function apply(card: TapCard, record: StandingRecord): TapCard {
  const { body } = record;
  const stamp = stampOf(record);
  switch (body.kind) {
    case 'tap-on-site':
      return { ...card, state: card.set === null ? 'on-site' : card.state, onSite: stamp };
    case 'tap-set':
      return { ...card, state: 'set', set: stamp, checked: null };
    case 'tap-checked':
      return card.set === null ? card : { ...card, state: 'checked', checked: stamp };
    case 'drop-supported':
      return { ...card, dropSupported: { ...stamp, distance: body.distance } };
    default:
      return card;
  }
}
