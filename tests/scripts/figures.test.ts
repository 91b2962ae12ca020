import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { runScript } from '../support/run-script.ts';
import { scenarioT1, scenarioT1AsDrawn } from '../support/scenarios.ts';

const folder = mkdtempSync(path.join(tmpdir(), 'figures-'));
afterAll(() => rmSync(folder, { recursive: true }));

function file(name: string, content: string): string {
  const place = path.join(folder, name);
  writeFileSync(place, content);
  return place;
}

const figures = (...args: string[]) => runScript('scripts/figures.ts', args);

test('figures of a job document are one JSON object on standard output, and nothing else anywhere', async () => {
  const { code, stdout, stderr } = await figures(file('job.json', JSON.stringify(scenarioT1())));
  expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
  expect(JSON.parse(stdout)).toMatchObject({ format: 'busway-figures/1', runs: [{ layout: { ok: true } }] });
});

test('a job with a stop is computed all the same', async () => {
  const { code, stdout } = await figures(file('stop.json', JSON.stringify(scenarioT1AsDrawn())));
  expect(code).toBe(0);
  expect(JSON.parse(stdout)).toMatchObject({ runs: [{ layout: { ok: false, incomplete: true } }], takeoff: [] });
});

test('a document with faults is refused, each with its path and what to do, and nothing is printed', async () => {
  const job = { ...scenarioT1(), wrong: 1, levels: [{ id: 'F1', name: 'Floor', order: 'first' }] };
  const { code, stdout, stderr } = await figures(file('faults.json', JSON.stringify(job)));
  expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
  expect(stderr).toContain('levels[0].order: ');
  expect(stderr).toContain('wrong: ');
});

test.each([
  ['a file that is not JSON', () => [file('broken.json', '{ "format": ')], 'Line 1'],
  ['a file that is not there', () => [path.join(folder, 'none.json')], 'cannot be read'],
  ['a folder', () => [folder], 'cannot be read'],
  ['no file', () => [], 'Give one file'],
  ['two files', () => ['a.json', 'b.json'], '2 files'],
  ['an option that nobody knows', () => ['--fast', 'a.json'], '--fast'],
])('%s is refused with what to do', async (_, args, words) => {
  const { code, stdout, stderr } = await figures(...args());
  expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
  expect(stderr).toContain(words);
});

test('standard input that holds nothing is refused like an empty file', async () => {
  const { code, stdout, stderr } = await figures('-');
  expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
  expect(stderr).toContain('empty');
});
