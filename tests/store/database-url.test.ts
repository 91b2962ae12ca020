import { readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { openDatabase } from '../../src/store/database.ts';
import { parseDatabaseUrl } from '../../src/store/database-url.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));

describe('a database address', () => {
  it('that starts with file: counts from the root of the project, wherever the process runs', () => {
    expect(parseDatabaseUrl('file:./data/a.db')).toEqual({ kind: 'sqlite', file: path.join(root, 'data', 'a.db') });
    expect(parseDatabaseUrl('file:data/a.db')).toEqual({ kind: 'sqlite', file: path.join(root, 'data', 'a.db') });
    expect(readFileSync(path.join(root, 'package.json'), 'utf8')).toContain('busway-job-book');
  });

  it('may name a file by its whole path', () => {
    expect(parseDatabaseUrl('file:/srv/a b.db')).toEqual({ kind: 'sqlite', file: '/srv/a b.db' });
    expect(parseDatabaseUrl('file:///srv/a%20b.db')).toEqual({ kind: 'sqlite', file: '/srv/a b.db' });
  });

  it.each(['postgres://u:p@h/d', 'postgresql://u:p@h/d'])('%s is PostgreSQL', (url) => {
    expect(parseDatabaseUrl(url)).toEqual({ kind: 'postgres', url });
  });

  it.each([
    ['mysql://u:secret@h/d', 'it has mysql:'],
    ['data/a.db', 'it has no scheme'],
    ['', 'it has no scheme'],
    ['file:', 'must name a file'],
    ['file::memory:', 'must name a file'],
    ['file:a.db?mode=ro', 'must name a file and nothing else'],
  ])('%s is refused with a sentence', async (url, sentence) => {
    await expect(openDatabase(url)).rejects.toThrow(sentence);
    await expect(openDatabase(url)).rejects.not.toThrow('secret');
  });
});
