import { mkdir, writeFile } from 'node:fs/promises';
import { newestMigration } from '../src/store/migrations.ts';
import { currentSchema, type Provider, providers, schemaDiff } from './schema-diff.ts';

// npm run migration -- NAME: writes the SQL that takes the newest migration's schema to prisma/schema.prisma, for both
// databases, with the schema beside it for the next comparison. Read the SQL before you commit it.
// A NAME that starts with 14 digits and _ keeps them as its time; any other gets the present time.
const name = process.argv[2];
if (name === undefined || !/^(\d{14}_)?[a-z][a-z0-9-]*$/.test(name)) {
  console.error('Say what the migration does, in lower case with hyphens: npm run migration -- add-piece-lot');
  process.exit(2);
}

const now = new Date().toISOString().replace(/[-:T]/g, '').slice(0, 14);
const folder = /^\d/.test(name) ? name : `${now}_${name}`;
for (const provider of providers) await writeMigration(provider, folder);

async function writeMigration(provider: Provider, folder: string): Promise<void> {
  const schema = await currentSchema(provider);
  const sql = await schemaDiff(provider, newestMigration(provider)?.schema, schema);
  if (sql === '') {
    console.error(`${provider}: the schema is what the newest migration made; nothing to write.`);
    return;
  }
  const target = new URL(`../prisma/migrations/${provider}/${folder}/`, import.meta.url);
  await mkdir(target, { recursive: true });
  await writeFile(new URL('migration.sql', target), sql);
  await writeFile(new URL('schema.prisma', target), schema);
  console.error(`${provider}: wrote prisma/migrations/${provider}/${folder}/migration.sql`);
}
