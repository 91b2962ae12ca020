import { readConfig } from '../src/config.ts';
import { migrate } from '../src/store/migrate.ts';

// npm run migrate: brings the database of DATABASE_URL to the shape that this version needs. `npm start` does the same.
try {
  const applied = await migrate(readConfig().databaseUrl, (line) => console.error(line));
  if (applied.length === 0) console.error('The database is up to date.');
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
