// node scripts/run.mjs FILE.ts args…: makes ready what is not, then runs the file in this same process.
import path from 'node:path';
import { setUp } from './setup.mjs';

const [node, , file, ...args] = process.argv;
try {
  if (file === undefined) throw new Error('Name the file to run: node scripts/run.mjs FILE.ts');
  await setUp();
} catch (error) {
  process.stderr.write(`${error.message}\n`);
  process.exit(1);
}
process.argv = [node, path.resolve(file), ...args];
const { importTypeScript } = await import('./typescript.mjs');
await importTypeScript(process.argv[1]);
