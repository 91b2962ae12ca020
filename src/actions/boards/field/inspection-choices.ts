import type { Reader } from '../../../store/database.ts';

/** What the list of records can be narrowed to. */
export interface InspectionChoices {
  /** Labels; null for a job of so many runs that a list of them helps nobody. */
  readonly runs: readonly string[] | null;
  readonly people: readonly { readonly id: string; readonly name: string }[];
}

const LISTED = 200;

export async function inspectionChoices(reader: Reader, projectId: string): Promise<InspectionChoices> {
  const [runs, people] = await Promise.all([
    reader.run.findMany({
      where: { projectId },
      orderBy: [{ ordinal: 'asc' }, { key: 'asc' }],
      take: LISTED + 1,
      select: { key: true },
    }),
    reader.inspection.groupBy({ by: ['byUserId', 'byName'], where: { projectId }, orderBy: { byName: 'asc' } }),
  ]);
  return {
    runs: runs.length > LISTED ? null : runs.map(({ key }) => key),
    people: people.map(({ byUserId: id, byName: name }) => ({ id, name })),
  };
}
