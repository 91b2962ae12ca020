import { openDatabase } from '../../src/store/database.ts';

// A second process for database.test.ts: adds one to a number so many times, each time from what it read.
const [url = '', times = '0'] = process.argv.slice(2);
const { write, close } = await openDatabase(url);
for (let done = 0; done < Number(times); done += 1) {
  await write(async (tx) => {
    const { version } = await tx.user.findUniqueOrThrow({ where: { id: 'counter' } });
    await tx.user.update({ where: { id: 'counter' }, data: { version: version + 1 } });
  });
}
await close();
