import type { Database } from '../store/database.ts';

/** What every action needs and nobody else hands it: the record, the time, fresh ids. Faked only in tests. */
export interface Context {
  readonly database: Database;
  readonly clock: () => Date;
  readonly newId: () => string;
}

/** The person asking, by session or by token. */
export interface Viewer {
  readonly userId: string;
  readonly name: string;
  readonly email: string;
  readonly administrator: boolean;
}
