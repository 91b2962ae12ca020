import type { ExtraDocument } from '../schema/bid.ts';

/** Extras have no label of their own: the item and its level stand for one, counted where they repeat. */
export function extrasByLabel(extras: readonly ExtraDocument[] = []): Map<string, ExtraDocument> {
  const labelled = new Map<string, ExtraDocument>();
  for (const extra of extras) {
    const name = extra.level === undefined ? extra.item : `${extra.item} on ${extra.level}`;
    labelled.set(freeLabel(name, labelled), extra);
  }
  return labelled;
}

function freeLabel(name: string, taken: ReadonlyMap<string, unknown>): string {
  if (!taken.has(name)) return name;
  let count = 2;
  while (taken.has(`${name} (${count})`)) count += 1;
  return `${name} (${count})`;
}
