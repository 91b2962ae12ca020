import { beforeAll, describe, expect, it } from 'vitest';
import { openDatabase } from '../../src/store/database.ts';
import { migratedUrl } from '../support/databases.ts';
import { assertAccessible, assertNoSideScroll, CHROMIUM, DESK, openBrowser, PHONE, type Window } from './browser.ts';
import { openSite, type Site } from './field-site.ts';

const DRAFT = 'F4-R06-B';

describe.skipIf(CHROMIUM === undefined)('several runs at once, in a real browser', () => {
  let window: Window;
  let site: Site;
  beforeAll(async () => {
    const database = await openDatabase(await migratedUrl('sqlite'));
    site = await openSite(database, { unreleased: [DRAFT] });
    window = await openBrowser();
    return async () => {
      await window.close();
      await site.close();
      await database.close();
    };
  });
  const several = (rest = '') => `${site.address}/jobs/${site.jobId}/runs/several${rest}`;

  it.each([
    ['on a phone', PHONE, 'light', 'grid', 'findings would appear'],
    ['on a desk, in the dark', DESK, 'dark', 'continuous', 'findings would go'],
  ] as const)(
    'a row is copied, paired and changed, and every page can be read by everybody %s',
    {
      timeout: 180_000,
    },
    async (_name, size, scheme, structure, said) => {
      const { page, context } = await window.person(size);
      await page.emulateMedia({ colorScheme: scheme });
      const looksRight = async () => {
        await assertAccessible(page);
        await assertNoSideScroll(page);
      };
      const row = size === PHONE ? '31' : '41';
      await site.signIn(page, 'olive');

      await page.goto(several('?level=F2&side=A'));
      await looksRight();
      await page.getByRole('button', { name: 'Copy them' }).click();
      expect(await page.getByRole('alert').textContent()).toContain('No run is ticked.');
      await page.getByLabel('F2-R01-A', { exact: true }).check();
      await page.getByRole('button', { name: 'Copy them' }).click();
      await looksRight();

      await page.getByLabel('Further rows').fill('1');
      await page.getByRole('button', { name: 'Show what would be made' }).click();
      expect(await page.locator('#f-pitch-xMm-fault').textContent()).toContain('With a pitch of 0');
      await looksRight();
      await page.getByLabel('Pitch, north').fill(`${row} m`);
      await page.getByLabel('Numbers count on by').fill(String(Number(row) - 1));
      await page.getByRole('button', { name: 'Show what would be made' }).click();
      const preview = page.getByRole('region', { name: 'What will be made' });
      expect(await preview.textContent()).toContain(`F2-R${row}-A`);
      await looksRight();
      await page.getByRole('button', { name: 'Make one run' }).click();
      expect(await page.getByRole('status').textContent()).toContain(`Run F2-R${row}-A is made and laid out.`);

      await page.goto(several(`/partners?run=F2-R${row}-A`));
      await looksRight();
      await page.getByLabel('How').selectOption('axis-right');
      await page.getByLabel('From the run to the axis').fill('300 mm');
      await page.getByRole('button', { name: 'Show what would be made' }).click();
      expect(await preview.textContent()).toContain(`F2-R${row}-B`);
      await looksRight();
      await page.getByRole('button', { name: 'Make one run' }).click();
      expect(await page.getByRole('status').textContent()).toContain(`Run F2-R${row}-B is made`);

      await page.goto(several(`?q=F2-R`));
      await page.getByLabel('All 14 that the filter shows').or(page.getByLabel('All 16 that the filter shows')).check();
      await page.getByRole('button', { name: 'Change them together' }).click();
      await looksRight();
      await page.getByLabel('Rod', { exact: true }).selectOption(size === PHONE ? '1/2' : '5/8');
      await page.getByLabel('Structure carries a hanger').selectOption(structure);
      if (structure === 'grid') await page.getByLabel('Distance between its lines').fill('13 ft');
      await page.getByRole('button', { name: 'Show what would change' }).click();
      const changes = page.getByRole('region', { name: 'What will change' });
      expect(await changes.textContent()).toContain(said);
      expect(await changes.textContent()).toContain('only the draft changes');
      await looksRight();
      await page.getByRole('button', { name: /^Change \d+ runs$/ }).click();
      expect(await page.getByRole('status').textContent()).toContain('runs are changed and laid out anew.');
      await context.close();
    },
  );
});
