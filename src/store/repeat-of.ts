import type { Reader } from './database.ts';

/** A run's place in the order of work. */
export interface WorkPlace {
  readonly projectId: string;
  readonly levelId: string;
  readonly levelOrdinal: number;
  readonly ordinal: number;
  readonly layoutOk: boolean;
}

/**
 * Which repeat a run is, or its level, as `repeatsOf` counts it over a whole job: by level order, then document order, sound
 * layouts alone. Counted by the database, so that no other run is read. null for a run without a sound layout.
 */
export async function repeatOf(reader: Reader, place: WorkPlace, over: 'run' | 'level'): Promise<number | null> {
  if (!place.layoutOk) return null;
  return over === 'run' ? runsUpTo(reader, place) : levelsUpTo(reader, place);
}

/** Two counts, each with its own index, where one would walk through every run of the job. */
async function runsUpTo(reader: Reader, { projectId, levelId, levelOrdinal, ordinal }: WorkPlace): Promise<number> {
  const before = await reader.run.count({
    where: { layoutOk: true, level: { projectId, ordinal: { lt: levelOrdinal } } },
  });
  const onLevel = await reader.run.count({ where: { levelId, layoutOk: true, ordinal: { lte: ordinal } } });
  return before + onLevel;
}

/** No two levels have the same order. */
function levelsUpTo(reader: Reader, { projectId, levelOrdinal }: WorkPlace): Promise<number> {
  return reader.level.count({
    where: { projectId, ordinal: { lte: levelOrdinal }, runs: { some: { layoutOk: true } } },
  });
}
