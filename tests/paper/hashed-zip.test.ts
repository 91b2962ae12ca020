import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { Readable } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { drawingNamer } from '../../src/paper/package/drawing-names.ts';
import { hashedZip, type PackagedFile } from '../../src/paper/package/hashed-zip.ts';
import { openSpool } from '../../src/paper/registers/spool.ts';
import { aFolder, bytesOf, kept, unpacked } from './support/unpacked.ts';

const file = (name: string, text: string, compress = true): PackagedFile => ({
  name,
  compress,
  bytes: () => [Buffer.from(text)],
});
const pack = (files: readonly PackagedFile[]) =>
  kept(
    Readable.from(
      hashedZip({
        files,
        dated: new Date('2026-05-12T23:30:00Z'),
        manifest: (sums) => JSON.stringify(sums.map((sum) => sum.name)),
      }),
      { objectMode: false },
    ),
  );

describe('a package', () => {
  it('lists every file with its SHA-256 as the usual tool checks it', async () => {
    const files = await unpacked(await pack([file('a.txt', 'hello\n'), file('b/c.bin', 'x'.repeat(70_000), false)]));
    const folder = aFolder();
    execFileSync('mkdir', [path.join(folder, 'b')]);
    for (const [name, bytes] of files) writeFileSync(path.join(folder, name), bytes);
    const said = execFileSync('sha256sum', ['-c', 'SHA256SUMS'], { cwd: folder, encoding: 'utf8' });
    expect(said).toBe('a.txt: OK\nb/c.bin: OK\nmanifest.json: OK\n');
    expect([...files.keys()]).toEqual(['a.txt', 'b/c.bin', 'manifest.json', 'SHA256SUMS']);
  });

  it('has the same bytes wherever its server stands, and dates its files with the day of the record', async () => {
    const zone = process.env.TZ;
    const made: Buffer[] = [];
    for (const place of ['UTC', 'America/Chicago', 'Pacific/Auckland']) {
      process.env.TZ = place;
      made.push(bytesOf(await pack([file('a.txt', 'hello')])));
    }
    process.env.TZ = zone ?? 'UTC';
    expect(made[1]?.equals(made[0] ?? Buffer.alloc(0))).toBe(true);
    expect(made[2]?.equals(made[0] ?? Buffer.alloc(0))).toBe(true);
    // The date of a local file header, APPNOTE 4.4.6: bits 15-9 year from 1980, 8-5 month, 4-0 day.
    const date = made[0]?.readUInt16LE(12) ?? 0;
    expect([(date >> 9) + 1980, (date >> 5) & 15, date & 31]).toEqual([2026, 5, 12]);
  });

  it('breaks off when a file cannot be made, and does not end as if it were whole', async () => {
    const broken: PackagedFile = {
      name: 'b.txt',
      bytes: async function* () {
        yield Buffer.from('half');
        throw new Error('the record went away');
      },
    };
    await expect(pack([file('a.txt', 'hello'), broken, file('c.txt', 'more')])).rejects.toThrow('the record went away');
  });
});

describe('names of drawings', () => {
  it('are the labels of the runs where a file may be called so, and never leave their folder or meet', () => {
    const nameFor = drawingNamer();
    const names = ['F1-R01-A', 'f1-r01-a', '../../etc/passwd', 'a/b', 'a\\b', 'CON', '.hidden', 'Łódź 7', 'x.'].map(
      nameFor,
    );
    expect(names).toEqual([
      'drawings/F1-R01-A.svg',
      'drawings/f1-r01-a~2.svg',
      'drawings/_etc_passwd~3.svg',
      'drawings/a_b~4.svg',
      'drawings/a_b~5.svg',
      'drawings/CON~6.svg',
      'drawings/_hidden~7.svg',
      'drawings/_d_7~8.svg',
      'drawings/x_~9.svg',
    ]);
    expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(names.length);
  });
});

describe('a spool', () => {
  it('gives back what was written, in order, however much it was', () => {
    const spool = openSpool();
    const lines = Array.from({ length: 50_000 }, (_, index) => `line ${index} Łódź\r\n`);
    for (const line of lines) spool.write(line);
    expect(Buffer.concat([...spool.read()]).toString('utf8')).toBe(lines.join(''));
  });
});
