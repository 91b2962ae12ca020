import { createHash } from 'node:crypto';
import type { Db } from './database.ts';

type Callback = (error?: unknown, session?: never) => void;

/** Sessions in the database under the hash of the cookie's value: they outlive a restart and hold for several server processes. */
export function sessionStore(db: Db, clock: () => Date, lifeMs: number) {
  const keyOf = (sid: string) => createHash('sha256').update(sid).digest('hex');
  return {
    get(sid: string, callback: Callback): void {
      db.session
        .findUnique({ where: { id: keyOf(sid) } })
        .then((row) => callback(null, (row === null || row.expiresAt <= clock() ? null : row.data) as never))
        .catch(callback);
    },
    set(sid: string, session: object, callback: Callback): void {
      const data = JSON.parse(JSON.stringify(session)) as { userId?: string };
      const row = { data: data as never, userId: data.userId ?? null, expiresAt: new Date(clock().getTime() + lifeMs) };
      db.session
        .upsert({ where: { id: keyOf(sid) }, create: { id: keyOf(sid), ...row }, update: row })
        .then(() => callback())
        .catch(callback);
    },
    destroy(sid: string, callback: Callback): void {
      db.session
        .deleteMany({ where: { OR: [{ id: keyOf(sid) }, { expiresAt: { lt: clock() } }] } })
        .then(() => callback())
        .catch(callback);
    },
  };
}
