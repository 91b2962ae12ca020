import { kindWord } from '../../../../views/words/quality/record-words.ts';
import type { Speech } from '../../../../views/words/quality.ts';
import { recordSummary } from '../../../../views/words/record-summary.ts';
import type { Context, Viewer } from '../../../actions/context.ts';
import { type InspectionFilter, listInspections } from '../../../actions/inspections.ts';
import type { RecordView } from '../../../actions/records/record-view.ts';
import { writeRows } from '../../../document/lists/write-table.ts';
import { toRecordBody } from '../../../document/record-to-model.ts';
import { outcomeWord } from './record-rows.ts';

const ROWS_A_PIECE = 500;

const HEADINGS = [
  'done at',
  'in the book since',
  'run',
  'on',
  'sort of record',
  'what',
  'outcome',
  'by',
  'replaces record',
  'cause',
  'replaced by record',
  'record',
];

interface Asked {
  readonly jobId: string;
  readonly filter: Omit<InspectionFilter, 'page' | 'limit'>;
  readonly say: Speech;
}

/**
 * The list for a spreadsheet, newest first, piece by piece, so that a book of any length goes out without being held. A record
 * that is made meanwhile pushes the others down; what was sent already is not sent again.
 */
export async function* recordsCsv(context: Context, viewer: Viewer, { jobId, filter, say }: Asked) {
  yield writeRows([HEADINGS]);
  let before = new Set<string>();
  for (let page = 1; ; page += 1) {
    const listed = await listInspections(context, viewer, jobId, { ...filter, page, limit: ROWS_A_PIECE });
    const fresh = listed.items.filter(({ id }) => !before.has(id));
    if (fresh.length > 0) yield writeRows(fresh.map((one) => cellsOf(one, say)));
    if (page * ROWS_A_PIECE >= listed.total) return;
    before = new Set(listed.items.map(({ id }) => id));
  }
}

function cellsOf(record: RecordView, say: Speech): string[] {
  const { at, recordedAt, run, mark, body, outcome, by, supersedes, supersededBy, id } = record;
  return [
    at,
    recordedAt,
    run,
    mark,
    kindWord(body.kind),
    recordSummary(toRecordBody(body), say),
    outcomeWord(outcome),
    by.name,
    supersedes?.id ?? '',
    supersedes?.cause ?? '',
    supersededBy ?? '',
    id,
  ];
}
