import type { Todo } from '../../src/domain/quality/work-list.ts';
import { formatLength } from '../../src/domain/units/format-length.ts';
import type { Length } from '../../src/domain/units/length.ts';
import type { Speech } from './quality/told.ts';
import { endWord } from './record-summary.ts';

export interface TodoThing {
  readonly todo: Todo;
  readonly mark: string | null;
  readonly at: Length | null;
  /** Of a piece. */
  readonly length: Length | null;
  readonly piece: string | null;
  /** Which way tap-offs face there, in words. */
  readonly faces: string | null;
}

/** What to do next, as a foreman says it: `hang P03, section 20'-0", tap-offs face NORTH`. */
export function todoWords({ todo, mark, at, length, piece, faces }: TodoThing, { units }: Speech): string {
  const place = at === null ? '' : ` at ${formatLength(at, units)}`;
  switch (todo.doing) {
    case 'set-hanger':
      return `set hanger ${mark}${place}`;
    case 'hang-piece':
      return [
        `hang ${mark}`,
        length === null ? piece : `${piece ?? 'section'} ${formatLength(length, units)}`,
        faces === null ? null : `tap-offs face ${faces.toUpperCase()}`,
      ]
        .filter((part) => part !== null)
        .join(', ');
    case 'make-joint':
      return `make joint ${mark}${place}`;
    case 'accept-joint':
      return `another person checks and accepts joint ${mark}`;
    case 'close-end':
      return `close the ${endWord(todo.end)}`;
    case 'close-slot':
      return 'close the unused slot';
    case 'set-tap':
      return `set tap-off ${mark}${place}, isolated and proved`;
    case 'check-tap':
      return `another person checks tap-off ${mark}`;
    case 'test-insulation':
      return 'test the insulation';
  }
}
