import type { PlacedPiece, RunLayout } from '../../../domain/layout/result.ts';
import type { Todo } from '../../../domain/quality/work-list.ts';
import type { Length } from '../../../domain/units/length.ts';
import type { ThingRows } from './read-things.ts';

/** The next thing to do on a run, with what it takes to say it. */
export interface NextThing {
  readonly todo: Todo;
  /** Of the thing; null for an end, the slot and a test. */
  readonly id: string | null;
  readonly mark: string | null;
  readonly at: Length | null;
  readonly length: Length | null;
  readonly kind: PlacedPiece['kind'] | null;
  /** Of the run as the floor has it, where the way that tap-offs face is asked. */
  readonly layout: RunLayout | null;
}

export function nextThing(todo: Todo, { key }: { readonly key: string }, rows: ThingRows): NextThing {
  const none = { id: null, mark: null, at: null, length: null, kind: null, layout: null };
  const short = (mark: string) => (mark.startsWith(`${key}-`) ? mark.slice(key.length + 1) : mark);
  switch (todo.doing) {
    case 'set-hanger': {
      const row = rows.supports[todo.index];
      return row === undefined
        ? { todo, ...none }
        : { todo, ...none, id: row.id, mark: short(row.mark), at: row.atU80 };
    }
    case 'hang-piece': {
      const row = rows.pieces[todo.index];
      if (row === undefined) return { todo, ...none };
      const { id, fromU80: at, toU80 } = row;
      const kind = row.kind as PlacedPiece['kind'];
      return { todo, ...none, id, mark: short(row.mark), at, length: toU80 - at, kind };
    }
    case 'make-joint':
    case 'accept-joint': {
      const row = rows.joints[todo.index];
      return row === undefined
        ? { todo, ...none }
        : { todo, ...none, id: row.id, mark: short(row.mark), at: row.atU80 };
    }
    case 'set-tap':
    case 'check-tap': {
      const row = rows.taps[todo.index];
      return row === undefined ? { todo, ...none } : { todo, ...none, id: row.id, mark: row.key, at: row.atU80 };
    }
    case 'close-end':
    case 'close-slot':
    case 'test-insulation':
      return { todo, ...none };
  }
}
