import type { Verdict } from '../../src/domain/quality/insulation/verdict.ts';
import type { OpenPoint, RunStatus } from '../../src/domain/quality/run-status.ts';

const STATUS: Readonly<Record<RunStatus, string>> = {
  planned: 'planned',
  'in-installation': 'in installation',
  'mechanically-complete': 'mechanically complete',
  tested: 'tested',
};

/** How a run's status is called on pages. */
export function runStatusWord(status: RunStatus): string {
  return STATUS[status];
}

const VERDICTS: Readonly<Record<Verdict, string>> = {
  pass: 'pass',
  fail: 'fail',
  incomplete: 'incomplete',
  'information-only': 'information only',
};

export function verdictWord(verdict: Verdict): string {
  return VERDICTS[verdict];
}

/** What is still to do for the next status, with its numbers. */
export function openPointWords({ code, count, of, detail }: OpenPoint): string {
  const some = `${count} of ${of}`;
  switch (code) {
    case 'layout-missing':
      return 'No layout fills this run yet.';
    case 'pieces-not-hung':
      return `${some} pieces not hung.`;
    case 'pieces-quarantined':
      return `${some} pieces in quarantine.`;
    case 'joints-not-accepted':
      return `${some} joints not accepted.`;
    case 'joints-reopened':
      return `${some} joints reopened.`;
    case 'supports-not-set':
      return `${some} hangers not set.`;
    case 'ends-open':
      return `${some} ends open.`;
    case 'slot-open':
      return 'Unused slots open.';
    case 'test-missing':
      return 'No insulation test.';
    case 'test-not-passed':
      return `The last insulation test is not a pass: ${detail}.`;
    case 'test-stale':
      return 'The insulation test is stale: work was done after it.';
  }
}
