import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runDemo } from '../../scripts/demo/run-demo.ts';
import { table } from '../../scripts/demo/table.ts';
import { verifyCloseout } from '../../src/paper/verify-closeout.ts';
import { runScript } from '../support/run-script.ts';

const folder = mkdtempSync(path.join(os.tmpdir(), 'jobbook-demo-'));
afterAll(() => rmSync(folder, { recursive: true }));

describe('the demo, with a crew for one day', () => {
  const told: string[] = [];
  const kept = new Map<string, string>();

  beforeAll(async () => {
    await runDemo({
      folder,
      tell: (text) => told.push(text),
      progress: () => {},
      keep: (name, content) => kept.set(name, content),
      extentOf: (run) => {
        if (run === 'F1-R01-A') return 'complete';
        if (run === 'F2-R03-A') return 'hung';
        return run === 'F3-R01-A' ? 'delivered' : null;
      },
    });
  }, 240_000);

  it('prints takeoff and hours, releases every run and counts the records', () => {
    const text = told.join('\n');
    expect(text).toMatch(/^section +stock +6096 mm +\d+ +/m);
    expect(text).toMatch(/^likely +mean +P10 +P50 +P80 +P90$|^ *likely +mean/m);
    expect(text).toContain('Released to the floor: 48 runs.');
    expect(text).toMatch(/Recorded by the crew: \d+ records/);
    expect(JSON.parse(kept.get('figures.json') ?? '{}').format).toBe('busway-figures/1');
  });

  it('shows what was refused, with the reason', () => {
    const text = told.join('\n');
    expect(text).toContain('nobody accepts their own joint');
    expect(text).toContain('Turn the section end for end');
    expect(text).toContain('is not hung');
  });

  it('leaves a package that verifies, and names it', async () => {
    const [zip, ...others] = readdirSync(folder);
    expect(others).toEqual([]);
    expect(told.at(-1)).toBe(`It is here: ${path.join(folder, zip ?? '')}`);
    expect(await verifyCloseout(path.join(folder, zip ?? ''))).toMatchObject({ ok: true, faults: [] });
  });
});

it('work that the service refuses ends the demo with what was said', async () => {
  const branchBeforeItsTee = runDemo({
    folder,
    tell: () => {},
    progress: () => {},
    keep: () => {},
    extentOf: (run) => (run === 'F1-R06-A-BR' ? 'seated' : null),
  });
  await expect(branchBeforeItsTee).rejects.toThrow(/answered 409, not 201: .*is not hung/);
}, 240_000);

describe('npm run demo', () => {
  it('does not write into a folder that holds something', async () => {
    const full = mkdtempSync(path.join(os.tmpdir(), 'jobbook-full-'));
    writeFileSync(path.join(full, 'kept.txt'), 'kept');
    const { code, stdout, stderr } = await runScript('scripts/demo.ts', ['--out', full]);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toContain('empty or new folder');
    expect(readdirSync(full)).toEqual(['kept.txt']);
    rmSync(full, { recursive: true });
  });
});

it('a table puts numbers to the right under their heads', () => {
  const text = table(
    ['item', 'quantity'],
    [
      ['section', 1_200],
      ['elbow', 1],
    ],
  );
  expect(text.split('\n')).toEqual([
    'item     quantity',
    '-------  --------',
    'section     1,200',
    'elbow           1',
  ]);
});
