import type { ElbowHand, TeeHand } from '../../src/domain/layout/result.ts';
import type { BuswayType } from '../../src/domain/model.ts';
import type { TakeoffItem, TakeoffLine } from '../../src/domain/takeoff/result.ts';
import { handWords } from '../drawings/strip/words.ts';

const WORDS: Readonly<Record<TakeoffItem, string>> = {
  section: 'section',
  elbow: 'elbow',
  tee: 'tee',
  clamp: 'joint clamp',
  'contact-set': 'contact set',
  bolt: 'joint bolt',
  'end-feed': 'end feed',
  'end-cap': 'end cap',
  'slot-closure': 'slot closure',
  support: 'hanger',
  rod: 'hanger rod',
  'rod-stock': 'rod to buy',
  anchor: 'fixing to the structure',
  nut: 'rod nut',
  'fire-seal': 'fire seal',
  tap: 'tap-off',
  drop: 'drop cord',
  label: 'label',
  extra: 'added by hand',
};

export function takeoffItemWord(item: TakeoffItem): string {
  return WORDS[item];
}

/** What to order, in words: "section, factory cut", "elbow, conductors inside the bend", "tap-off L1-N 30 A". */
export function takeoffLineWords({ item, kind, hand }: Pick<TakeoffLine, 'item' | 'kind' | 'hand'>): string {
  if (item === 'section') return kind === 'cut' ? 'section, factory cut' : 'section';
  if (item === 'extra') return `${kind ?? 'something'}, added by hand`;
  if (item === 'end-feed') return kind === 'centre' ? 'centre feed' : 'end feed';
  const named = kind === null ? WORDS[item] : `${WORDS[item]} ${kind.replace('-', item === 'anchor' ? ' ' : '-')}`;
  return hand === null ? named : `${named}, ${handWords(hand as ElbowHand | TeeHand)}`;
}

/** The sheet's own word for a part, where it gives one. */
export function sheetWord(item: TakeoffItem, type: Pick<BuswayType, 'words'> | undefined): string | null {
  if (item === 'clamp') return type?.words.clamp ?? null;
  return item === 'contact-set' ? (type?.words.contactSet ?? null) : null;
}
