// npm run dev: like npm start, but the server starts again whenever one of its files changes.
import { fileURLToPath } from 'node:url';
import { runAttached } from './child.mjs';
import { setUp } from './setup.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));

try {
  await setUp();
  const migrated = await runAttached(process.execPath, ['scripts/run.mjs', 'scripts/migrate.ts'], { cwd: root });
  const watch = ['node_modules/tsx/dist/cli.mjs', 'watch', '--clear-screen=false', 'src/server.ts'];
  process.exitCode = migrated === 0 ? await runAttached(process.execPath, watch, { cwd: root }) : migrated;
} catch (error) {
  process.stderr.write(`${error.message}\n`);
  process.exitCode = 1;
}
