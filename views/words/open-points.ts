import type { OpenPoint } from '../../src/domain/quality/run-status.ts';

/** What is still to do for a run's next status: `joints-reopened`, 1 of 4 gives "1 of 4 joints reopened". */
export function openPointWords({ code, count, of, detail }: OpenPoint): string {
  const some = (things: string) => `${count} of ${of} ${things}`;
  switch (code) {
    case 'layout-missing':
      return 'no sound layout';
    case 'pieces-not-hung':
      return some('pieces to hang');
    case 'pieces-quarantined':
      return some('pieces quarantined');
    case 'joints-not-accepted':
      return some('joints to be accepted');
    case 'joints-reopened':
      return some('joints reopened');
    case 'supports-not-set':
      return some('hangers to set');
    case 'ends-open':
      return count === 1 ? 'an end is open' : `${count} ends are open`;
    case 'slot-open':
      return 'the slot is open';
    case 'test-missing':
      return 'no insulation test';
    case 'test-not-passed':
      return `the insulation test is no pass${detail === null ? '' : `: ${detail.replace(/-/g, ' ')}`}`;
    case 'test-stale':
      return 'work was done after the insulation test, so it is stale';
  }
}
