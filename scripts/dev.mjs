// npm run dev: like npm start, but the server starts again whenever one of its files changes.
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { runAttached } from './child.mjs';
import { setUp } from './setup.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const tsx = path.join(root, 'node_modules', 'tsx', 'dist', 'cli.mjs');

try {
  await setUp();
  const watch = [tsx, 'watch', '--clear-screen=false', 'scripts/serve.ts'];
  process.exitCode = await runAttached(process.execPath, watch, { cwd: root });
} catch (error) {
  process.stderr.write(`${error.message}\n`);
  process.exitCode = 1;
}
