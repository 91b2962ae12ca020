import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { lockFile, makeProject } from './project.ts';

describe('set-up', () => {
  let project: ReturnType<typeof makeProject>;
  beforeEach(() => {
    project = makeProject();
  });
  afterEach(() => project.remove());

  const setUp = () => project.node('scripts/setup.mjs');

  it('generates both database clients and says so in one line; the second time it does and says nothing', async () => {
    expect(await setUp()).toEqual({ code: 0, stdout: '', stderr: 'Generating the database clients …\n' });
    expect(project.calls()).toEqual(['generate sqlite', 'generate postgres']);
    expect(await setUp()).toEqual({ code: 0, stdout: '', stderr: '' });
    expect(project.calls()).toEqual([]);
  });

  it('writes the same models for PostgreSQL', async () => {
    await setUp();
    const stamped = project.read('prisma/.derived/postgres.prisma');
    expect(stamped).toContain('provider = "postgresql"');
    expect(stamped).toContain('output   = "../../gen/postgres"');
    expect(stamped).not.toContain('"sqlite"');
  });

  it('generates again when the models changed', async () => {
    await setUp();
    project.calls();
    project.write('prisma/schema.prisma', `${project.read('prisma/schema.prisma')}// changed\n`);
    await setUp();
    expect(project.calls()).toEqual(['generate sqlite', 'generate postgres']);
  });

  it('installs when the lock file asks for another version, and only once', async () => {
    await setUp();
    project.calls();
    project.write('package-lock.json', lockFile('2.0.0'));
    expect((await setUp()).stderr).toContain('Installing the packages of package-lock.json');
    expect(project.calls()).toEqual(['npm ci']);
    expect((await setUp()).stderr).toBe('');
  });

  it('installs nothing when somebody has run npm themselves', async () => {
    await setUp();
    project.calls();
    project.write('package-lock.json', lockFile('2.0.0'));
    project.write('node_modules/.package-lock.json', lockFile('2.0.0'));
    expect((await setUp()).stderr).toBe('');
    expect(project.calls()).toEqual([]);
  });

  it('started twice at once does its work once', async () => {
    const both = await Promise.all([setUp(), setUp(), setUp()]);
    expect(both.map((outcome) => outcome.code)).toEqual([0, 0, 0]);
    expect(project.calls()).toEqual(['generate sqlite', 'generate postgres']);
  });

  it('takes over from a set-up that died', async () => {
    const died = await project.node('-e', 'console.log(process.pid)');
    project.write('.stamps/setup.lock', died.stdout.trim());
    expect((await setUp()).code).toBe(0);
    expect(project.calls()).toEqual(['generate sqlite', 'generate postgres']);
  });

  it('says what stands in the way and ends with 1', async () => {
    project.write('node_modules/prisma/build/index.js', `console.error('the model has a fault'); process.exit(3);`);
    const outcome = await setUp();
    expect(outcome.code).toBe(1);
    expect(outcome.stderr).toContain('Generating the database client of prisma/schema.prisma failed');
    expect(outcome.stderr).toContain('the model has a fault');
    expect((await setUp()).code).toBe(1);
  });
});
