import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';

const script = fileURLToPath(new URL('../../scripts/check-layers.mjs', import.meta.url));

describe('the layer check', () => {
  let root: string;
  beforeEach(() => {
    root = mkdtempSync(path.join(os.tmpdir(), 'jobbook-layers-'));
    file('src/domain/model.ts', 'export const one = 1;\n');
    file('views/page.tsx', `import { one } from '../src/domain/model.ts';\nexport const two = one;\n`);
  });
  afterEach(() => rmSync(root, { recursive: true, force: true }));

  it('passes when every import points down', () => {
    file(
      'src/http/pages.ts',
      `import { two } from '../../views/page.tsx';\nimport { one } from '../domain/model.ts';\n`,
    );
    expect(check()).toEqual({ code: 0, problems: [] });
  });

  it.each([
    ['src/domain/a.ts', `import { x } from '../store/x.ts';`, 'domain may import only domain'],
    ['src/domain/a.ts', `import { readFile } from 'node:fs';`, 'the domain is pure'],
    ['src/domain/a.ts', `export type { X } from '../document/x.ts';`, 'domain may import only domain'],
    ['src/domain/a.ts', `export const x = await import('../actions/x.ts');`, 'domain may import only domain'],
    ['src/domain/a.ts', `import {\n  a,\n  b,\n} from '../http/x.ts';`, 'domain may import only domain'],
    ['src/document/a.ts', `import '../store/x.ts';`, 'document may import only document, domain'],
    ['src/store/a.ts', `import { x } from '../actions/x.ts';`, 'store may import only store, domain, document'],
    ['src/actions/a.ts', `import { x } from '../http/x.ts';`, 'actions may import only'],
    ['src/actions/a.ts', `import { Prisma } from '../../gen/sqlite/client.ts';`, 'only src/store may'],
    ['src/http/a.ts', `import pg from 'pg';`, 'only src/store may'],
    ['src/http/a.ts', `import { PrismaPg } from '@prisma/adapter-pg';`, 'only src/store may'],
    ['src/paper/a.ts', `import { two } from '../../views/page.tsx';`, 'paper may import only'],
    ['views/a.tsx', `import { x } from '../src/actions/x.ts';`, 'views may import only'],
    ['views/drawings/a.tsx', `import { x } from '../page.tsx';`, 'drawings may import only'],
    ['src/http/a.ts', `export const port = process.env.PORT;`, 'reads the environment'],
    ['src/domain/a.ts', `export const now = Date.now();`, 'reads the clock'],
    ['src/domain/a.ts', `export const now = new Date();`, 'reads the clock'],
    ['src/domain/a.ts', `export const dice = Math.random();`, 'throws dice'],
  ])('refuses in %s: %s', (name, text, problem) => {
    file(name, `${text}\n`);
    const { code, problems } = check();
    expect(code).toBe(1);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toContain(name);
    expect(problems[0]).toContain(problem);
  });

  it('lets drawings be used on paper, and the environment be read in config.ts', () => {
    file('views/drawings/strip.tsx', `import { one } from '../../src/domain/model.ts';\n`);
    file('src/paper/book.ts', `import { strip } from '../../views/drawings/strip.tsx';\n`);
    file('src/config.ts', `export const port = process.env.PORT;\n`);
    expect(check()).toEqual({ code: 0, problems: [] });
  });

  it('does not read comments', () => {
    file(
      'src/domain/a.ts',
      `/**\n * Unlike Math.random() this repeats.\nimport { x } from '../store/x.ts';\n */\n// new Date()\n`,
    );
    expect(check()).toEqual({ code: 0, problems: [] });
  });

  function file(name: string, text: string): void {
    const target = path.join(root, name);
    mkdirSync(path.dirname(target), { recursive: true });
    writeFileSync(target, text);
  }

  function check() {
    const done = spawnSync(process.execPath, [script, root], { encoding: 'utf8' });
    return { code: done.status, problems: done.stderr.split('\n').filter((line) => line !== '') };
  }
});
