import { type Book, makeRoom } from './book.ts';
import { breakLines } from './break-lines.ts';
import { BOLD, measure, put, say } from './lettering.ts';

export type Fact = readonly [label: string, value: string];

const LABEL = 6;
const VALUE = 8;
const LINE = 9.6;

/** Named values in columns, as the head of a sheet shows them. A value is broken in its column and never cut. */
export function drawFacts(book: Book, facts: readonly Fact[], across = 5): void {
  const width = book.frame.width / across;
  for (let first = 0; first < facts.length; first += across) {
    const row = facts.slice(first, first + across);
    const values = row.map(([, value]) => breakLines(say(book, value), width - 8, measure(book, BOLD, VALUE)));
    const deepest = Math.max(...values.map((lines) => lines.length));
    makeRoom(book, 8 + Math.min(deepest, 12) * LINE + 5);
    for (const [index, [label]] of row.entries())
      put(book, say(book, label), book.frame.left + index * width, book.y, { size: LABEL });
    book.y += 8;
    for (let line = 0; line < deepest; line++) {
      makeRoom(book, LINE);
      for (const [index, lines] of values.entries()) {
        put(book, lines[line] ?? '', book.frame.left + index * width, book.y, { face: BOLD, size: VALUE });
      }
      book.y += LINE;
    }
    book.y += 5;
  }
  book.y += 3;
}
