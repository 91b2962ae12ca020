import { expect, it } from 'vitest';
import { forEachDatabase } from '../support/databases.ts';

forEachDatabase((open) => {
  it('keeps a row', async () => {
    const { db, write } = await open();
    await write((tx) => tx.user.create({ data: { id: 'u1', email: 'a@example.test', name: 'A', passwordHash: 'x', createdAt: new Date(0) } }));
    expect(await db.user.count()).toBe(1);
  });
});
