import { cardHref } from '../../../../views/components/card-href.ts';
import type { FloorStopLine } from '../../../../views/pages/field/floor/stops.tsx';
import type { FloorStop } from '../../../actions/boards/field/floor-stops.ts';
import { fieldRunHref } from './field-sheet.ts';

export function stopLine(jobId: string, levelId: string, stop: FloorStop): FloorStopLine {
  const { kind, runId, runKey, thing, reason, by, at } = stop;
  const run = fieldRunHref(jobId, levelId, runId);
  const line = { key: `${kind} ${thing?.id ?? runId}`, reason, by, at };
  switch (kind) {
    case 'quarantined':
      return { ...line, what: `${thing?.mark} in quarantine`, href: cardHref(jobId, 'piece', thing?.id ?? '') };
    case 'reopened':
      return { ...line, what: `${thing?.mark} reopened`, href: cardHref(jobId, 'joint', thing?.id ?? '') };
    case 'not-released':
      return { ...line, what: `The office has not released ${runKey}`, href: run };
    case 'test-not-passed':
      return {
        ...line,
        what: `${runKey}: its insulation test is no pass`,
        reason: reason === null ? null : `Verdict: ${reason.replace('-', ' ')}.`,
        href: `/jobs/${jobId}/runs/${runId}/insulation`,
      };
    case 'test-stale':
      return {
        ...line,
        what: `${runKey}: work was done after its insulation test`,
        reason: 'The test counts no longer: test again.',
        href: `/jobs/${jobId}/runs/${runId}/insulation`,
      };
  }
}

/** Runs that wait for the office, in one line however many they are. */
export function waitingLine(jobId: string, levelId: string, waiting: readonly FloorStop[]): FloorStopLine[] {
  const [first, ...more] = waiting;
  if (first === undefined) return [];
  const line = stopLine(jobId, levelId, first);
  if (more.length === 0) return [line];
  const names = waiting.slice(0, NAMED).map(({ runKey }) => runKey);
  const rest = waiting.length > NAMED ? ` and ${waiting.length - NAMED} more` : '';
  return [
    { ...line, what: `The office has not released ${waiting.length} runs`, reason: `${names.join(', ')}${rest}` },
  ];
}

const NAMED = 6;
