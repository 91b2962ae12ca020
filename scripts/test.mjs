// npm test [-- ARGS FOR VITEST]: types, lint, layers, then the tests. Every step runs even when an earlier one failed,
// and the runner's own closing lines come last. Exit code 0 only when all of them passed.
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { run, runAttached } from './child.mjs';
import { setUp } from './setup.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const tool = (...parts) => path.join(root, 'node_modules', ...parts);

const CHECKS = [
  ['types', [tool('typescript', 'bin', 'tsc'), '--noEmit']],
  ['lint', [tool('@biomejs', 'biome', 'bin', 'biome'), 'check', '.', '--error-on-warnings']],
  ['layers', [path.join(root, 'scripts', 'check-layers.mjs')]],
];

try {
  await setUp();
  const passed = [];
  for (const [name, args] of CHECKS) passed.push(await check(name, args));
  const tests = await runAttached(process.execPath, [tool('vitest', 'vitest.mjs'), 'run', ...process.argv.slice(2)], {
    cwd: root,
  });
  process.exitCode = tests === 0 && !passed.includes(false) ? 0 : 1;
} catch (error) {
  console.error(error.message);
  process.exitCode = 1;
}

async function check(name, args) {
  const began = performance.now();
  const { code, output } = await run(process.execPath, args, { cwd: root });
  const seconds = ((performance.now() - began) / 1000).toFixed(1);
  if (code !== 0) console.log(output.trimEnd());
  console.log(`${name.padEnd(8)}${code === 0 ? 'passed' : 'FAILED'} in ${seconds} s`);
  return code === 0;
}
