import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Theme } from '../../views/shell/page.tsx';
import {
  assertAccessibleByDayAndNight,
  assertNoSideScroll,
  CHROMIUM,
  DESK,
  openBrowser,
  PHONE,
  type Window,
} from '../browser/browser.ts';
import { galleryPage } from './support/gallery-page.tsx';

const SITE = 'http://gallery.test';
const FILES: Readonly<Record<string, readonly [string, string]>> = {
  '/assets/app.css': ['views/assets/app.css', 'text/css'],
  '/assets/field.js': ['views/assets/field.js', 'text/javascript'],
  '/assets/icon.svg': ['views/assets/icon.svg', 'image/svg+xml'],
  '/vendor/htmx-4.0.1/htmx.min.js': ['node_modules/htmx.org/dist/htmx.min.js', 'text/javascript'],
};

/** The gallery of every component, as a browser gets it. */
async function openGallery(page: Page, theme: Theme): Promise<void> {
  await page.route(`${SITE}/**`, (route) => {
    const file = FILES[new URL(route.request().url()).pathname];
    const body = file ? readFileSync(file[0], 'utf8') : galleryPage(theme, '/assets');
    return route.fulfill({ body, contentType: file?.[1] ?? 'text/html; charset=utf-8' });
  });
  await page.goto(`${SITE}/`);
}

describe.runIf(CHROMIUM !== undefined)('every component, looked at in a browser', () => {
  let window: Window;
  beforeAll(async () => {
    window = await openBrowser();
  });
  afterAll(() => window.close());

  const CASES = (['office', 'field'] as const).flatMap((theme) =>
    [PHONE, DESK].map((viewport) => [theme, viewport.width, viewport] as const),
  );

  it.each(CASES)(
    '%s, %i px: axe finds nothing by day or by night, and the page does not scroll sideways',
    async (theme, _, viewport) => {
      const { context, page } = await window.person(viewport);
      await openGallery(page, theme);
      await page.evaluate(() => {
        for (const details of document.querySelectorAll('details')) details.open = true;
      });
      await assertAccessibleByDayAndNight(page);
      await assertNoSideScroll(page);
      await context.close();
    },
    60_000,
  );

  it('on field pages everything that is pressed is at least 44 px high', async () => {
    const { context, page } = await window.person(PHONE);
    await openGallery(page, 'field');
    const small = await page.evaluate(() =>
      [...document.querySelectorAll('.button, input:not([type=hidden]), select, summary, .parts a, .trail a')]
        .map((target) => target.closest('.tick') ?? target)
        .map((target) => ({ what: target.textContent, height: target.getBoundingClientRect().height }))
        .filter(({ height }) => height < 44),
    );
    expect(small).toEqual([]);
    await context.close();
  });

  it('the things of a strip are large enough to press: 24 px or more (WCAG 2.5.8)', async () => {
    const { context, page } = await window.person(DESK);
    await openGallery(page, 'office');
    const small = await page.evaluate(() =>
      [...document.querySelectorAll('.strip a')]
        .map((target) => ({ what: target.textContent, box: target.getBoundingClientRect() }))
        .filter(({ box }) => box.width < 24 || box.height < 24)
        .map(({ what }) => what),
    );
    expect(small).toEqual([]);
    await context.close();
  });

  it('focus shows on whatever has it', async () => {
    const { context, page } = await window.person(DESK);
    await openGallery(page, 'office');
    for (let press = 0; press < 60; press++) {
      await page.keyboard.press('Tab');
      const ring = await page.evaluate(() => {
        const style = getComputedStyle(document.activeElement ?? document.body);
        return `${document.activeElement?.tagName} ${style.outlineStyle} ${Number.parseFloat(style.outlineWidth) >= 2}`;
      });
      expect(ring).toMatch(/ (solid|auto) true$/);
    }
    await context.close();
  }, 60_000);

  it('a drawing too wide for a phone scrolls in its own region, by keyboard too', async () => {
    const { context, page } = await window.person(PHONE);
    await openGallery(page, 'office');
    const drawing = page.locator('.drawing').first();
    await drawing.focus();
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => drawing.evaluate((node) => node.scrollLeft)).toBeGreaterThan(0);
    await context.close();
  });

  it('on paper the title block is a foot that the browser repeats on each sheet, and totals are not', async () => {
    const { context, page } = await window.person(DESK);
    await openGallery(page, 'office');
    await page.emulateMedia({ media: 'print' });
    const printed = (selector: string) =>
      page.evaluate((wanted) => {
        const style = getComputedStyle(document.querySelector(wanted) ?? document.body);
        return [style.display, style.breakInside];
      }, selector);
    expect(await printed('.title-block')).toEqual(['table-footer-group', 'avoid']);
    expect((await printed('tfoot'))[0]).toBe('table-row-group');
    expect((await printed('.parts'))[0]).toBe('none');
    await context.close();
  });
});
