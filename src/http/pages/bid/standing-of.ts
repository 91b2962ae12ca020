import type { Conflict } from '../../../../views/components/conflict-list.tsx';
import type { BidView } from '../../../actions/bids.ts';
import { mergeBidForm } from '../../../document/bid-form/merge-bid-form.ts';
import type { BidSection } from '../../../document/bid-form/sections.ts';
import { writeBidForm } from '../../../document/bid-form/write-bid-form.ts';
import { type BidDocument, bidSchema, type ProjectDocument } from '../../../document/job-document.ts';
import type { Entered } from '../form.ts';
import type { FragmentTried } from '../settings/fragment.ts';

interface Now {
  readonly section: BidSection;
  readonly project: Pick<ProjectDocument, 'units' | 'currency'>;
  readonly entries: BidView;
  readonly now: Entered;
}

interface Standing {
  /** What the form that is shown was made from. */
  readonly version: number;
  readonly shown: { readonly entered: Entered; readonly base: string; readonly conflicts?: readonly Conflict[] };
}

/**
 * What a form of the bid shows: the record as it stands, what was typed with something wrong in it – made from what it was
 * made from, or a save of somebody else would be written over unseen – or, after such a save, both merged.
 */
export function standingOf(tried: FragmentTried | null, of: Now): Standing {
  const { entries, now } = of;
  const base = JSON.stringify(entries.document ?? {});
  if (tried === null) return { version: entries.version, shown: { entered: now, base } };
  const { fields, trouble } = tried;
  if (trouble?.refusal.code !== 'stale')
    return {
      version: Number(fields.version) || entries.version,
      shown: { entered: fields, base: fields.base ?? base },
    };
  const was = baseOf(fields);
  if (was === null) return { version: entries.version, shown: { entered: fields, base } };
  const merged = mergeBidForm(of.section, {
    was: writeBidForm(was, of.project, of.section),
    mine: fields,
    theirs: now,
  });
  return { version: entries.version, shown: { entered: merged.fields, base, conflicts: merged.conflicts } };
}

/** The entries that a form was made from, as it sent them along. */
function baseOf(fields: Entered): BidDocument | null {
  try {
    const parsed = bidSchema.safeParse(JSON.parse(fields.base ?? ''));
    return parsed.success ? parsed.data : null;
  } catch {
    return null;
  }
}
