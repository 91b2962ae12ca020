import type { Reader } from '../../store/database.ts';
import { type RecordView, viewOfRow } from './record-view.ts';
import { idAt, markAt, type SubjectAt } from './subject-at.ts';

/** Every record of the subject as the API and the pages show it, in the order of the book. */
export async function historyOf(reader: Reader, at: SubjectAt): Promise<RecordView[]> {
  const rows = await reader.inspection.findMany({ where: { subjectId: idAt(at) }, orderBy: { seq: 'asc' } });
  const replacedBy = new Map(rows.map((row) => [row.supersedesId, row.id]));
  const placed = { run: at.floor.key, mark: markAt(at) };
  return rows.map((row) => viewOfRow(row, { ...placed, supersededBy: replacedBy.get(row.id) ?? null }));
}
