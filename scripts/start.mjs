// npm start: makes ready what is not, then serves in this same process, which so gets the signals itself.
import { setUp } from './setup.mjs';

try {
  await setUp();
} catch (error) {
  process.stderr.write(`${error.message}\n`);
  process.exit(1);
}
const { importTypeScript } = await import('./typescript.mjs');
await importTypeScript('scripts/serve.ts');
