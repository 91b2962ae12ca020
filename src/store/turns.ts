import { refuseInsideWrite } from './write-transaction.ts';

/** Waits for one's turn and gives the function that ends it. */
export type TakeTurn = () => Promise<() => void>;

/** A queue for one thing that only one may use at a time: turns come in the order in which they were asked for. */
export function createTurns(): TakeTurn {
  let last: Promise<void> = Promise.resolve();
  return async () => {
    refuseInsideWrite();
    const before = last;
    let endTurn!: () => void;
    last = new Promise((resolve) => {
      endTurn = resolve;
    });
    await before;
    return endTurn;
  };
}
