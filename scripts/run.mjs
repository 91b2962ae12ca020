// node scripts/run.mjs FILE.ts args…: makes ready what is not, then runs the file in this same process.
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { setUp } from './setup.mjs';

try {
  const [, , file, ...args] = process.argv;
  if (file === undefined) throw new Error('Name the file to run: node scripts/run.mjs FILE.ts');
  await setUp();
  const { allowTypeScript } = await import('./typescript.mjs');
  allowTypeScript();
  process.argv = [process.argv[0], path.resolve(file), ...args];
} catch (error) {
  process.stderr.write(`${error.message}\n`);
  process.exit(1);
}
await import(pathToFileURL(process.argv[1]).href);
