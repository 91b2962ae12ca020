/**
 * A second opinion on small cutting-stock instances, written without the program's own search: the pieces one by one,
 * longest first, each into every stick that still has room or into a new one, keeping the best.
 */
export function fewestSticks(
  stock: number,
  pieces: readonly { readonly length: number; readonly count: number }[],
): number {
  const lengths = pieces.flatMap(({ length, count }) => Array.from({ length: count }, () => length));
  lengths.sort((a, b) => b - a);
  let fewest = lengths.length;

  function place(next: number, rooms: readonly number[]): void {
    if (rooms.length >= fewest) return;
    const length = lengths[next];
    if (length === undefined) {
      fewest = rooms.length;
      return;
    }
    const tried = new Set<number>();
    rooms.forEach((room, i) => {
      if (room < length || tried.has(room)) return;
      tried.add(room);
      place(
        next + 1,
        rooms.map((other, j) => (i === j ? other - length : other)),
      );
    });
    place(next + 1, [...rooms, stock - length]);
  }

  place(0, []);
  return fewest;
}
