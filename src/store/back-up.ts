import { existsSync, mkdirSync, renameSync, rmSync, statSync } from 'node:fs';
import path from 'node:path';
import SqliteFile from 'better-sqlite3';

// A write by another process starts the copy again from its first page, so the steps are long: 40 MB each.
const PAGES_PER_STEP = 10_000;

/**
 * Copies a SQLite database to `out` while others read and write it, and checks the copy from end to end before it gets
 * its name. A copy that stands under its name is therefore whole. Throws when `out` is there already, or when SQLite
 * finds a fault.
 */
export async function backUp(file: string, out: string): Promise<{ readonly file: string; readonly bytes: number }> {
  const target = path.resolve(out);
  if (!existsSync(file)) throw new Error(`There is no database at ${file}, so there is nothing to back up.`);
  if (existsSync(target)) throw new Error(`${target} is there already: name another file with --out.`);
  mkdirSync(path.dirname(target), { recursive: true, mode: 0o700 });
  const unfinished = `${target}.unfinished-${process.pid}`;
  try {
    await copy(file, unfinished);
    check(unfinished);
    renameSync(unfinished, target);
  } finally {
    for (const rest of ['', '-wal', '-shm', '-journal']) rmSync(`${unfinished}${rest}`, { force: true });
  }
  return { file: target, bytes: statSync(target).size };
}

async function copy(file: string, out: string): Promise<void> {
  const source = new SqliteFile(file, { readonly: true, fileMustExist: true });
  try {
    await source.backup(out, { progress: () => PAGES_PER_STEP });
  } finally {
    source.close();
  }
}

function check(file: string): void {
  const database = new SqliteFile(file);
  try {
    // One file without a log beside it, so that it can be carried away alone.
    database.pragma('journal_mode = DELETE');
    const verdict = database.pragma('integrity_check', { simple: true });
    if (verdict !== 'ok') throw new Error(`The copy is faulty, so it was not kept: ${verdict}`);
    const orphans = database.prepare('PRAGMA foreign_key_check').all();
    if (orphans.length > 0)
      throw new Error(`The copy has ${orphans.length} rows without their parent; it was not kept.`);
  } finally {
    database.close();
  }
}
