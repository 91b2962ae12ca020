import type { GapReason } from './gap.ts';
import type { RowId } from './readiness.ts';

/** What each row asks, as the page and the book say it. */
export const ROW_WORDS: Readonly<Record<RowId, { readonly title: string; readonly asks: string }>> = {
  released: { title: 'Runs released as drawn', asks: 'each run released to the floor, and not changed on paper since' },
  pieces: { title: 'Pieces in place', asks: 'each section and fitting hung, with every joint at its ends accepted' },
  joints: { title: 'Joints accepted', asks: 'each joint accepted by somebody who did none of its steps' },
  supports: { title: 'Hangers set', asks: 'each hanger set: rod plumb, load nut, lock nut' },
  ends: { title: 'Ends closed', asks: 'each open end with its cap fitted and its screw set' },
  slot: { title: 'Unused slots closed', asks: 'each run with its unused slots closed' },
  'fire-seals': { title: 'Fire seals', asks: 'each crossing of a fire-rated wall or floor reported sealed' },
  taps: { title: 'Tap-offs checked', asks: 'each tap-off set and checked' },
  drops: { title: 'Drops supported', asks: 'each drop with its first support recorded' },
  insulation: {
    title: 'Insulation tests',
    asks: 'each run with a passing insulation test, and no work since on anything it is connected to',
  },
  instruments: { title: 'Instruments', asks: 'each test with the calibration date of its instrument' },
  sheets: { title: 'Data sheets', asks: 'each busway type with the sheet its figures came from' },
};

const GAP_WORDS: Readonly<Record<GapReason, string>> = {
  'not-released': 'not released to the floor',
  'changed-since-release': 'drawn differently since its release',
  quarantined: 'quarantined',
  'not-hung': 'not hung',
  'joints-open': 'hung, with a joint not accepted',
  'not-accepted': 'not accepted',
  reopened: 'opened again and not accepted',
  'not-set': 'not set',
  'end-open': 'not closed',
  'slot-open': 'unused slots not recorded as closed',
  'not-sealed': 'fire seal not reported',
  'not-checked': 'set and not checked',
  'drop-not-supported': 'drop without a recorded support',
  'test-missing': 'no insulation test',
  'test-failed': 'insulation test failed',
  'test-incomplete': 'insulation test incomplete',
  'test-information-only': 'insulation test for information only',
  'test-stale': 'insulation test older than work on what it is connected to',
  'calibration-unknown': 'instrument without a calibration date',
  'sheet-not-named': 'data sheet not named',
};

/** Why it is a gap, in plain words: `gapWords('not-accepted') = 'not accepted'`. */
export function gapWords(reason: GapReason): string {
  return GAP_WORDS[reason];
}
