import type { Viewer } from '../../../actions/context.ts';
import type { Reach } from '../../../actions/reach.ts';

interface ReadCard {
  readonly reached: Reach;
  readonly retired: boolean;
}

/** What the person may do on a card; on that of a thing that left the design, nothing but read. */
export function viewerOfCard({ userId, name }: Viewer, { reached, retired }: ReadCard) {
  return {
    id: userId,
    name,
    role: reached.role,
    mayInstall: reached.may('install') && !retired,
    mayAccept: reached.may('inspect') && !retired,
  };
}
