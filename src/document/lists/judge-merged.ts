import { parseJobDocument } from '../parse-job-document.ts';
import type { JobDocument } from '../schema/document.ts';
import type { ListFault } from './list-fault.ts';

type Place = Pick<ListFault, 'row' | 'column' | 'value'>;

/** The job with the list in it must still be a job document: whatever its rules find is told at the list's own cell. */
export function judgeMerged(merged: JobDocument, placeOf: (path: string) => Place): ListFault[] {
  const parsed = parseJobDocument(merged);
  if (parsed.ok) return [];
  return parsed.faults.map(({ path, message, remedy }) => ({ ...placeOf(path), problem: message, remedy }));
}
