import { renderPage, type Theme } from '../../../views/shell/page.tsx';
import { FieldGallery } from './field-gallery.tsx';
import { OfficeGallery } from './office-gallery.tsx';

/** Every component on one sheet, in one of the two themes. */
export function galleryPage(theme: Theme, assets: string): string {
  const isOffice = theme === 'office';
  return renderPage(
    {
      title: isOffice ? 'Run L2-R03-A' : 'Joint J03',
      lede: 'Level 2, row 3, A-side. Plover Quay is invented, and so are its people and figures.',
      viewer: { name: 'R. Ibe', roleWord: isOffice ? 'office' : 'foreman' },
      job: { id: 'pq', number: 'T-104', name: 'Plover Quay Block C' },
      part: 'floors',
      trail: [
        { word: 'Jobs', href: '/' },
        { word: 'Plover Quay Block C', href: '/jobs/pq' },
        { word: 'Level 2', href: '/jobs/pq/levels/L2' },
      ],
      theme,
      csrf: 'token',
      assets,
      flash: { kind: 'done', text: 'Released to the floor as revision 3.' },
      revision: '3',
      asOf: new Date('2026-05-12T20:40:00Z'),
      timeZone: 'America/Chicago',
    },
    isOffice ? <OfficeGallery /> : <FieldGallery />,
  );
}
