import path from 'node:path';
import { parseArgs } from 'node:util';
import { readConfig } from '../src/config.ts';
import { backUp } from '../src/store/back-up.ts';
import { parseDatabaseUrl } from '../src/store/database-url.ts';

// npm run backup -- [--out FILE]: a copy of the SQLite database, taken while the server runs, and checked. Without
// --out it goes into the folder backups beside the database.
const POSTGRES = `This database is PostgreSQL, which has a tool of its own for this. Run:
  pg_dump --format=custom --no-owner --file=jobbook.dump "$DATABASE_URL"
and to bring it back into an empty database:
  pg_restore --no-owner --exit-on-error --dbname="$DATABASE_URL" jobbook.dump`;

try {
  const { values } = parseArgs({ options: { out: { type: 'string' } } });
  const target = parseDatabaseUrl(readConfig().databaseUrl);
  if (target.kind === 'postgres') {
    console.error(POSTGRES);
    process.exitCode = 2;
  } else {
    const copy = await backUp(target.file, values.out ?? nameBeside(target.file, new Date()));
    console.log(`Backed up ${target.file} to ${copy.file} (${copy.bytes} bytes, integrity checked).`);
  }
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}

function nameBeside(database: string, now: Date): string {
  const time = now.toISOString().slice(0, 19).replaceAll(':', '');
  return path.join(path.dirname(database), 'backups', `jobbook-${time}Z.db`);
}
