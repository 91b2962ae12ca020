import { cardHref } from '../../../../views/components/card-href.ts';
import type { NextThing } from '../../../actions/boards/field/next-thing.ts';
import { fieldRunHref } from './field-sheet.ts';

/** Where a thing that is to be done is recorded. */
export function todoHref(
  jobId: string,
  levelId: string,
  runId: string,
  doing: NextThing['todo']['doing'],
  id: string | null,
): string {
  switch (doing) {
    case 'set-hanger':
      return cardHref(jobId, 'support', id ?? '');
    case 'hang-piece':
      return cardHref(jobId, 'piece', id ?? '');
    case 'make-joint':
    case 'accept-joint':
      return cardHref(jobId, 'joint', id ?? '');
    case 'set-tap':
    case 'check-tap':
      return cardHref(jobId, 'tap', id ?? '');
    case 'close-end':
    case 'close-slot':
      return `/jobs/${jobId}/runs/${runId}/ends`;
    case 'test-insulation':
      return `/jobs/${jobId}/runs/${runId}/insulation`;
    default:
      return fieldRunHref(jobId, levelId, runId);
  }
}
