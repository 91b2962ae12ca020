import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { backUp } from '../../src/store/back-up.ts';
import { openDatabase } from '../../src/store/database.ts';
import { migratedUrl } from '../support/databases.ts';
import { runScript } from '../support/run-script.ts';

describe('a backup', () => {
  let folder: string;
  beforeEach(() => {
    folder = mkdtempSync(path.join(os.tmpdir(), 'jobbook-backup-'));
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  it('taken while the job book is open and written to is a whole database with every committed row', async () => {
    const url = await migratedUrl('sqlite');
    const book = await openDatabase(url);
    await book.write((tx) => tx.user.create({ data: user('before') }));
    const out = path.join(folder, 'copy.db');
    const writing = Promise.all(['a', 'b', 'c'].map((id) => book.write((tx) => tx.user.create({ data: user(id) }))));
    const copied = await backUp(fileOf(url), out);
    await writing;
    await book.close();
    const copy = await openDatabase(`file:${copied.file}`);
    expect(await copy.db.user.findUnique({ where: { id: 'before' } })).toMatchObject(user('before'));
    await copy.close();
  });

  it('is one file that nothing else belongs to', async () => {
    await backUp(fileOf(await migratedUrl('sqlite')), path.join(folder, 'deep', 'copy.db'));
    expect(readdirSync(path.join(folder, 'deep'))).toEqual(['copy.db']);
  });

  it('never replaces a file', async () => {
    const out = path.join(folder, 'copy.db');
    writeFileSync(out, 'precious');
    await expect(backUp(fileOf(await migratedUrl('sqlite')), out)).rejects.toThrow('is there already');
    expect(readFileSync(out, 'utf8')).toBe('precious');
  });

  it('of a file that is not a database leaves no copy', async () => {
    const file = path.join(folder, 'not.db');
    writeFileSync(file, 'not a database at all, though long enough to be looked at as if it were one');
    await expect(backUp(file, path.join(folder, 'copy.db'))).rejects.toThrow('not a database');
    expect(readdirSync(folder)).toEqual(['not.db']);
  });

  it('by the command says where it went', async () => {
    const url = await migratedUrl('sqlite');
    const out = path.join(folder, 'copy.db');
    const done = await runScript('scripts/backup.ts', ['--out', out], { DATABASE_URL: url });
    expect(done.code).toBe(0);
    expect(done.stdout).toContain(out);
    expect(existsSync(out)).toBe(true);
  });

  it('of PostgreSQL is left to its own tool, named with its arguments', async () => {
    const done = await runScript('scripts/backup.ts', [], { DATABASE_URL: 'postgresql://nobody@127.0.0.1/none' });
    expect(done.code).toBe(2);
    expect(done.stderr).toContain('pg_dump --format=custom');
  });
});

function fileOf(url: string): string {
  return url.slice('file:'.length);
}

function user(id: string) {
  return { id, email: `${id}@example.test`, name: id, passwordHash: '', createdAt: new Date('2027-03-01T08:00:00Z') };
}
