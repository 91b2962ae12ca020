import { copyFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { renderPage, type Theme } from '../../views/shell/page.tsx';
import { FieldGallery } from './support/field-gallery.tsx';
import { OfficeGallery } from './support/office-gallery.tsx';

/** Writes every component and several strips to out/gallery, to be looked at: `npx tsx tests/views/gallery.tsx`. */
const folder = 'out/gallery';
mkdirSync(folder, { recursive: true });
for (const name of ['app.css', 'icon.svg', 'field.js']) copyFileSync(`views/assets/${name}`, `${folder}/${name}`);
mkdirSync(`${folder}/vendor`, { recursive: true });
copyFileSync('node_modules/htmx.org/dist/htmx.min.js', `${folder}/vendor/htmx.min.js`);

export function galleryPage(theme: Theme): string {
  return renderPage(
    {
      title: theme === 'office' ? 'Run L2-R03-A' : 'Joint J03',
      lede: 'Level 2, row 3, A-side. Plover Quay is invented, and so are its people and figures.',
      viewer: { name: 'R. Ibe', roleWord: theme === 'office' ? 'office' : 'foreman' },
      job: { id: 'pq', number: 'T-104', name: 'Plover Quay Block C' },
      part: 'floors',
      trail: [
        { word: 'Jobs', href: '/' },
        { word: 'Plover Quay Block C', href: '/jobs/pq' },
        { word: 'Level 2', href: '/jobs/pq/levels/L2' },
      ],
      theme,
      csrf: 'token',
      assets: '.',
      flash: { kind: 'done', text: 'Released to the floor as revision 3.' },
      revision: '3',
      asOf: new Date('2026-05-12T20:40:00Z'),
      timeZone: 'America/Chicago',
    },
    theme === 'office' ? <OfficeGallery /> : <FieldGallery />,
  );
}

for (const theme of ['office', 'field'] as const)
  writeFileSync(`${folder}/${theme}.html`, galleryPage(theme).replaceAll('/vendor/htmx-4.0.1', './vendor'));
readFileSync(`${folder}/office.html`);
