import { readConfig } from '../src/config.ts';
import { migrate } from '../src/store/migrate.ts';

// What npm start and npm run dev run: the database is brought up to date before the server opens it.
try {
  await migrate(readConfig().databaseUrl, (line) => console.error(line));
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exit(1);
}
await import('../src/server.ts');
