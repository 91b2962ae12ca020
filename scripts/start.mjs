// npm start: makes ready what is not, brings the database up to date, then serves in this same process, which so gets
// the signals itself.
import { setUp } from './setup.mjs';

try {
  await setUp();
  const { allowTypeScript } = await import('./typescript.mjs');
  allowTypeScript();
  const { readConfig } = await import('../src/config.ts');
  const { migrate } = await import('../src/store/migrate.ts');
  await migrate(readConfig().databaseUrl, (line) => process.stderr.write(`${line}\n`));
} catch (error) {
  process.stderr.write(`${error.message}\n`);
  process.exit(1);
}
await import('../src/server.ts');
