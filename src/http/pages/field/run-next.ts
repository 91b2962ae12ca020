import { pieceWord } from '../../../../views/drawings/strip/words.ts';
import type { GroupOf } from '../../../../views/pages/field/run/group.tsx';
import type { FieldRunPageProps } from '../../../../views/pages/field/run.tsx';
import { todoWords } from '../../../../views/words/todo.ts';
import type { FieldRun, ReleasedRun } from '../../../actions/boards/field/field-run.ts';
import type { Todo } from '../../../domain/quality/work-list.ts';
import { shortMark } from './along.ts';
import { facesAt } from './facing.ts';
import { todoHref } from './todo-href.ts';

export const GROUPS: Readonly<Record<Todo['doing'], GroupOf>> = {
  'set-hanger': 'hangers',
  'hang-piece': 'pieces',
  'make-joint': 'joints',
  'accept-joint': 'joints',
  'close-end': 'ends',
  'close-slot': 'ends',
  'set-tap': 'taps',
  'check-tap': 'taps',
  'test-insulation': 'tests',
};

/** The thing that a step of the list speaks of. */
function thingOf({ floor }: ReleasedRun, todo: Todo) {
  const none = { id: null, mark: null, at: null, length: null, piece: null, faces: null };
  switch (todo.doing) {
    case 'set-hanger': {
      const row = floor.supports[todo.index];
      return {
        ...none,
        id: row?.id ?? null,
        mark: row === undefined ? null : shortMark(floor, row.mark),
        at: row?.atU80 ?? null,
      };
    }
    case 'hang-piece': {
      const [row, placed] = [floor.pieces[todo.index], floor.layout.pieces[todo.index]];
      if (row === undefined || placed === undefined) return none;
      const { from, to, kind } = placed;
      const faces = facesAt(floor.layout, from);
      return {
        id: row.id,
        mark: shortMark(floor, row.mark),
        at: from,
        length: to - from,
        piece: pieceWord(kind),
        faces,
      };
    }
    case 'make-joint':
    case 'accept-joint': {
      const row = floor.joints[todo.index];
      return {
        ...none,
        id: row?.id ?? null,
        mark: row === undefined ? null : shortMark(floor, row.mark),
        at: row?.atU80 ?? null,
      };
    }
    case 'set-tap':
    case 'check-tap': {
      const row = floor.taps[todo.index];
      return { ...none, id: row?.id ?? null, mark: row?.key ?? null, at: row?.atU80 ?? null };
    }
    case 'close-end':
    case 'close-slot':
    case 'test-insulation':
      return none;
  }
}

export function nextOf(
  { heading, level, run }: FieldRun['where'],
  released: ReleasedRun,
  todo: Todo,
): FieldRunPageProps['next'] {
  const { units, timeZone } = heading.project;
  const thing = thingOf(released, todo);
  const words = todoWords({ todo, ...thing }, { units, zone: timeZone ?? null });
  const href = todoHref(heading.reached.projectId, level.id, run.id, todo.doing, thing.id);
  return { what: words, href, go: thing.mark === null ? 'Open it' : `Card of ${thing.mark}` };
}
