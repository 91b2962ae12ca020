import { type CardOf, cardHref } from '../../../../views/components/card-href.ts';
import type { InspectionRow } from '../../../../views/pages/inspections.tsx';
import type { Speech } from '../../../../views/words/quality.ts';
import { recordSummary } from '../../../../views/words/record-summary.ts';
import type { JobHeading } from '../../../actions/job-heading.ts';
import type { RecordView } from '../../../actions/records/record-view.ts';
import { toRecordBody } from '../../../document/record-to-model.ts';

export function sayOf({ project }: JobHeading): Speech {
  return { units: project.units, zone: project.timeZone ?? null };
}

export function outcomeWord(outcome: string | null): string {
  return outcome?.replace('-', ' ') ?? '';
}

export function rowOf(jobId: string, view: RecordView, say: Speech): InspectionRow {
  const own = (id: string) => `/jobs/${jobId}/inspections/${id}`;
  return {
    id: view.id,
    href: own(view.id),
    at: new Date(view.at),
    recordedAt: new Date(view.recordedAt),
    mark: view.mark,
    markHref: subjectHref(jobId, view),
    kind: view.body.kind,
    what: recordSummary(toRecordBody(view.body), say),
    outcome: outcomeWord(view.outcome),
    isTrouble: view.outcome !== null && view.outcome !== 'credited' && view.outcome !== 'pass',
    by: view.by.name,
    replaces: view.supersedes === null ? null : { href: own(view.supersedes.id), cause: view.supersedes.cause },
    replacedByHref: view.supersededBy === null ? null : own(view.supersededBy),
  };
}

function subjectHref(jobId: string, { subject, subjectId, body }: RecordView): string {
  if (subject !== 'run') return cardHref(jobId, subject satisfies CardOf, subjectId);
  return `/jobs/${jobId}/runs/${subjectId}/${body.kind === 'insulation-test' ? 'insulation' : 'ends'}`;
}
