const KEPT = 4;

/** A reading of this key if there is one at hand, or one made now, from the last reading of the same job where there is one. */
export type KeepReading<T> = (
  key: string,
  projectId: string,
  read: (before: Promise<T> | undefined) => Promise<T>,
) => Promise<T>;

/**
 * Keeps the last few readings of jobs in this server process. A key says everything that a reading hangs on, so that none is
 * ever stale; who asks while it is being made waits for the same one, and one that failed is forgotten.
 */
export function keptReadings<T>(): KeepReading<T> {
  const kept = new Map<string, { readonly projectId: string; readonly reading: Promise<T> }>();
  return (key, projectId, read) => {
    const known = kept.get(key);
    if (known !== undefined) return known.reading;
    const before = [...kept.values()].reverse().find((entry) => entry.projectId === projectId)?.reading;
    const reading = read(before);
    kept.set(key, { projectId, reading });
    for (const old of [...kept.keys()].slice(0, Math.max(0, kept.size - KEPT))) kept.delete(old);
    reading.catch(() => kept.delete(key));
    return reading;
  };
}
