import { cpSync, mkdirSync, writeFileSync } from 'node:fs';
import { galleryPage } from './support/gallery-page.tsx';

/** Writes every component and several strips to out/gallery, to be looked at: `npx tsx tests/views/gallery.ts`. */
const folder = 'out/gallery';
mkdirSync(folder, { recursive: true });
cpSync('views/assets', folder, { recursive: true });
cpSync('node_modules/htmx.org/dist/htmx.min.js', `${folder}/vendor/htmx.min.js`);
for (const theme of ['office', 'field'] as const)
  writeFileSync(`${folder}/${theme}.html`, galleryPage(theme, '.').replaceAll('/vendor/htmx-4.0.1', './vendor'));
