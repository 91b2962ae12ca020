/** SQLite's adapter takes 999 values in one question, and Prisma splits none that is ordered: room is left for the rest. */
const MOST_VALUES = 900;

/**
 * Asks for as many values as there are, in questions that any database takes, and puts the answers together. `lists` is
 * how often one question names its values. What comes back is in no order of the whole.
 */
export async function inChunks<Value, Row>(
  values: readonly Value[],
  read: (chunk: Value[]) => Promise<readonly Row[]>,
  lists = 1,
): Promise<Row[]> {
  const size = Math.floor(MOST_VALUES / lists);
  const rows: Row[] = [];
  for (let from = 0; from < values.length; from += size) {
    for (const row of await read(values.slice(from, from + size))) rows.push(row);
  }
  return rows;
}
