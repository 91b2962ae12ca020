import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { parseArgs } from 'node:util';
import type { Extent } from './demo/install.ts';
import { runDemo } from './demo/run-demo.ts';

/**
 * `npm run demo -- [--out DIR]`: the whole job headless, through the public API alone, on a database that is thrown away.
 * Results on standard output, progress on standard error; the closeout package and the figures stay in `out/demo-DATE`.
 * Exit 1 when anything was not as expected, 2 for a command that is refused.
 */
const USAGE = 'npm run demo -- [--out DIR]: an empty or new folder for the closeout package.';

const folder = readFolder();
if (folder === null) {
  process.stderr.write(`${USAGE}\n`);
  process.exitCode = 2;
} else {
  mkdirSync(folder, { recursive: true });
  try {
    await runDemo({
      folder,
      tell: (text) => process.stdout.write(`${text}\n`),
      progress: (text) => process.stderr.write(`${text}\n`),
      keep: (name, content) => writeFileSync(path.join(folder, name), content),
      extentOf,
    });
  } catch (error) {
    process.stderr.write(`Not as expected: ${error instanceof Error ? error.message : String(error)}\n`);
    process.exitCode = 1;
  }
}

/** Floor 1 whole, the run round the corner on floor 3 whole, and the rest as a job stands on some day. */
function extentOf(run: string): Extent | null {
  if (run.startsWith('F1-') || run === 'F3-R06-A') return 'complete';
  if (run.startsWith('F2-R01') || run.startsWith('F2-R02')) return 'seated';
  if (run.startsWith('F2-R03')) return 'hung';
  if (run.startsWith('F2-')) return 'hangers';
  return run.startsWith('F3-') ? 'delivered' : null;
}

function readFolder(): string | null {
  try {
    const { values } = parseArgs({ options: { out: { type: 'string' } } });
    const named = path.resolve(values.out ?? freeFolder());
    return existsSync(named) && readdirSync(named).length > 0 ? null : named;
  } catch {
    return null;
  }
}

/** A second demo of the same day gets a folder of its own. */
function freeFolder(): string {
  const day = path.join('out', `demo-${new Date().toISOString().slice(0, 10)}`);
  for (let n = 1; ; n += 1) {
    const folder = n === 1 ? day : `${day}-${n}`;
    if (!existsSync(folder)) return folder;
  }
}
