import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import type { Bench } from './bench.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));

export const figuresProcess: Bench = {
  name: 'figures-process',
  measured: 'figures of the demo job from the command line, start of the process and all',
  baseline: 'node -e 0',
  reading: 'how many bare starts of node it costs',
  prepare: () => {
    const folder = mkdtempSync(path.join(os.tmpdir(), 'jobbook-bench-'));
    const file = path.join(folder, 'demo.json');
    writeFileSync(file, JSON.stringify(demoJob()));
    return {
      measured: () => node('scripts/run.mjs', 'scripts/figures.ts', file),
      baseline: () => node('-e', '0'),
      close: () => rmSync(folder, { recursive: true, force: true }),
    };
  },
};

async function node(...args: readonly string[]): Promise<void> {
  const child = spawn(process.execPath, [...args], { cwd: root, stdio: ['ignore', 'ignore', 'inherit'] });
  const [code] = await once(child, 'exit');
  if (code !== 0) throw new Error(`node ${args.join(' ')} ended with ${code}`);
}
