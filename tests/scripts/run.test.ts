import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { makeProject } from './project.ts';

describe('running a TypeScript file', () => {
  let project: ReturnType<typeof makeProject>;
  beforeEach(() => {
    project = makeProject();
    project.write('src/greeting.ts', `export const greeting: string = 'good morning';\n`);
    project.write(
      'scripts/hello.ts',
      `import { greeting } from '../src/greeting.ts';\nconsole.log(greeting, ...process.argv.slice(2));\n`,
    );
  });
  afterEach(() => project.remove());

  const run = (...args: readonly string[]) => project.node('scripts/run.mjs', ...args);

  it('hands on its arguments and prints nothing of its own to the output', async () => {
    expect((await run('scripts/hello.ts', '--loud', 'all')).stdout).toBe('good morning --loud all\n');
    expect(await run('scripts/hello.ts')).toEqual({ code: 0, stdout: 'good morning\n', stderr: '' });
  });

  it('sees a change in a file that it imports', async () => {
    await run('scripts/hello.ts');
    project.write('src/greeting.ts', `export const greeting: string = 'good evening to all';\n`);
    expect((await run('scripts/hello.ts')).stdout).toBe('good evening to all\n');
  });

  it('lets a module find the files beside it', async () => {
    project.write('src/table.txt', 'eight');
    project.write(
      'src/table.ts',
      `import { readFileSync } from 'node:fs';\nexport const table: string = readFileSync(new URL('./table.txt', import.meta.url), 'utf8');\n`,
    );
    project.write('scripts/table.ts', `import { table } from '../src/table.ts';\nconsole.log(table);\n`);
    expect((await run('scripts/table.ts')).stdout).toBe('eight\n');
  });

  it('names our own file and line when it fails, and ends with 1', async () => {
    project.write(
      'src/faulty.ts',
      `type Nothing = undefined;\n\nexport function fail(): Nothing {\n  throw new Error('on purpose');\n}\n`,
    );
    project.write('scripts/faulty.ts', `import { fail } from '../src/faulty.ts';\nfail();\n`);
    const outcome = await run('scripts/faulty.ts');
    expect(outcome.code).toBe(1);
    expect(outcome.stderr).toMatch(/faulty\.ts:4/);
  });

  it('asks for a file when none is named', async () => {
    expect(await run()).toEqual({
      code: 1,
      stdout: '',
      stderr: 'Name the file to run: node scripts/run.mjs FILE.ts\n',
    });
  });
});
