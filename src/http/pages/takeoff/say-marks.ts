import type { OrderBoard } from '../../../actions/boards/order-board.ts';
import type { OrderLine } from '../../../domain/ordering/order-list.ts';

/** `F1-R01-A: P01, P02; F1-R01-B: P01`; spares were counted from no place. */
export function sayMarks({ purpose, parts }: OrderLine, marksOf: OrderBoard['marksOf']): string {
  if (purpose !== 'work') return '';
  return parts
    .filter(({ run, places }) => run !== null && places.length > 0)
    .map(
      (part) =>
        `${part.run}: ${marksOf(part)
          .map(({ mark }) => mark)
          .join(', ')}`,
    )
    .join('; ');
}
