import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { openDatabase } from '../../src/store/database.ts';
import { migratedUrl } from '../support/databases.ts';
import { assertAccessible, assertNoSideScroll, CHROMIUM, DESK, openBrowser, PHONE, type Window } from './browser.ts';
import { openSite, type Site } from './field-site.ts';

const STRAIGHT = 'F4-R06-B';

describe.skipIf(CHROMIUM === undefined)('the form of a run, in a real browser', () => {
  let window: Window;
  let site: Site;
  let edit: string;
  let blank: string;
  beforeAll(async () => {
    const database = await openDatabase(await migratedUrl('sqlite'));
    site = await openSite(database, { unreleased: [STRAIGHT] });
    const row = await database.db.run.findFirstOrThrow({ where: { key: STRAIGHT }, select: { id: true } });
    blank = `/jobs/${site.jobId}/runs/new`;
    edit = `/jobs/${site.jobId}/runs/${row.id}/edit`;
    window = await openBrowser();
    return async () => {
      await window.close();
      await site.close();
      await database.close();
    };
  });

  const open = async (size: typeof DESK, at = blank, options = {}) => {
    const { page, context } = await window.person(size, options);
    page.setDefaultTimeout(8_000);
    await site.signIn(page, 'olive', at);
    if (new URL(page.url()).pathname !== at) await page.goto(`${site.address}${at}`);
    return { page, context };
  };

  it('the drawing follows the typing, and the caret stays where it is', { timeout: 60_000 }, async () => {
    const { page, context } = await open(DESK);
    const length = page.getByLabel('Length of leg 1');
    await length.fill('');
    await length.pressSequentially('50 ft', { delay: 30 });
    await page.getByText('As typed; nothing is saved yet.').waitFor();
    expect(await figures(page)).toContain(`50'-0" long`);
    expect(await besideOf(page, 'legs[0].lengthMm')).toBe(`= 50'-0"`);
    expect(await page.locator('#drawn svg.strip desc').textContent()).toContain(`50'-0" long`);
    // Typing goes on in the middle of the text while answers come.
    for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('5');
    await page.getByText(`505'-0" long`, { exact: true }).waitFor();
    expect(await caret(page)).toEqual({ name: 'legs[0].lengthMm', value: '505 ft', at: 3 });
    expect(await page.getByRole('button', { name: 'Show drawing' }).isVisible()).toBe(false); // the script draws
    await context.close();
  });

  it('an entry that cannot be read is told beside its field, and the last good drawing stays', {
    timeout: 60_000,
  }, async () => {
    const { page, context } = await open(DESK);
    const length = page.getByLabel('Length of leg 1');
    await length.fill('70 ft');
    await page.getByText(`70'-0" long`, { exact: true }).waitFor();
    const before = await figures(page);
    await length.fill('70 x');
    await page.getByText('Not drawn anew: one entry is to put right.').waitFor();
    expect(await besideOf(page, 'legs[0].lengthMm')).toContain('This cannot be read as a length.');
    expect(await length.getAttribute('aria-invalid')).toBe('true');
    expect(await figures(page)).toBe(before);
    expect(await caret(page)).toMatchObject({ name: 'legs[0].lengthMm', value: '70 x' });
    await assertAccessible(page);
    await length.fill('10.6');
    await page.getByText('As typed; nothing is saved yet.').waitFor();
    expect(await besideOf(page, 'legs[0].lengthMm')).toBe(`10.6 ft is 10'-7 3/16". Did you mean 10'-6"?`);
    expect(await length.getAttribute('aria-invalid')).toBeNull();
    await context.close();
  });

  it('a slow answer never stands over a newer one', { timeout: 60_000 }, async () => {
    const { page, context } = await open(DESK);
    let asked = 0;
    await page.route('**/drawing', async (route) => {
      asked += 1;
      if (asked === 1) await new Promise((done) => setTimeout(done, 1_500));
      await route.continue().catch(() => undefined); // the browser may have given the first one up
    });
    const length = page.getByLabel('Length of leg 1');
    await length.fill('40 ft');
    await page.waitForRequest('**/drawing');
    await length.fill('60 ft');
    await page.getByText(`60'-0" long`, { exact: true }).waitFor();
    await page.waitForTimeout(1_800);
    expect(asked).toBe(2);
    expect(await figures(page)).toContain(`60'-0" long`);
    await context.close();
  });

  it('a block pasted into a cell fills the rows from there, and one that does not fit is told and kept', {
    timeout: 60_000,
  }, async () => {
    const { page, context } = await open(DESK);
    await page.getByLabel('Length of leg 1').focus();
    await paste(page, `Length\tTurn\n40 ft\tleft\n30'-0"\tRight\n20 ft\t\n10.5\t\n`);
    await page.getByText('Legs: 4 pasted.').waitFor();
    expect(await page.getByLabel('Length of leg 2').inputValue()).toBe(`30'-0"`);
    expect(await page.getByLabel('Turn at its end of leg 2').inputValue()).toBe('right');
    expect(await page.getByLabel('Length of leg 4').inputValue()).toBe('10.5');
    expect(await page.getByLabel('Length of leg 6').inputValue()).toBe(''); // two rows stand empty for more
    expect((await caret(page)).name).toBe('legs[0].lengthMm');

    await page.getByRole('button', { name: 'Take that back' }).click();
    expect(await page.getByLabel('Length of leg 1').inputValue()).toBe('');
    await page.getByLabel('Length of leg 1').focus();
    await paste(page, `40 ft\tleft\n30'-0"\tright\n20 ft`);
    await page.getByText('Legs: 3 pasted.').waitFor();

    await page.getByLabel('Turn at its end of leg 2').focus();
    await paste(page, 'left\nlefft\n');
    await page.getByText('Not drawn anew: one entry is to put right.').waitFor();
    expect(await page.locator('#typed-words').textContent()).toContain(
      'Legs, row 2, turn: "lefft" is not none, left, right, up or down. Did you mean left?',
    );
    expect(await page.getByLabel('Turn at its end of leg 2').inputValue()).toBe('right');
    expect(await page.getByLabel('Rows of legs').inputValue()).toBe('left\nlefft\n');
    await assertAccessible(page);
    await assertNoSideScroll(page);
    await context.close();
  });

  it('rows go by keyboard: down, a new one, one between, one away', { timeout: 60_000 }, async () => {
    const { page, context } = await open(DESK);
    const length = (leg: number) => page.getByLabel(`Length of leg ${leg}`, { exact: true });
    await length(1).focus();
    for (const text of ['10 ft', '20 ft', '30 ft', '40 ft']) {
      await page.keyboard.press('Control+A');
      await page.keyboard.type(text);
      await page.keyboard.press('Enter');
    }
    expect((await caret(page)).name).toBe('legs[4].lengthMm');
    await page.getByText(`100'-0" long`, { exact: true }).waitFor();
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Alt+Delete');
    expect(await length(3).inputValue()).toBe('40 ft');
    await page.getByText(`70'-0" long`, { exact: true }).waitFor();
    await page.keyboard.press('Alt+Insert');
    await page.keyboard.type('5 ft');
    expect(await length(4).inputValue()).toBe('40 ft');
    await page.getByText(`75'-0" long`, { exact: true }).waitFor();
    await length(1).focus();
    await page.keyboard.press('Tab');
    expect((await caret(page)).name).toBe('legs[0].turn');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    expect((await caret(page)).name).toBe('legs[1].lengthMm');
    await page.getByRole('button', { name: 'Remove leg 2', exact: true }).click();
    expect(await length(2).inputValue()).toBe('5 ft');
    await page.getByRole('button', { name: 'Take that back' }).click();
    expect(await length(2).inputValue()).toBe('20 ft');
    expect(await length(3).inputValue()).toBe('5 ft');
    await page.getByText(`75'-0" long`, { exact: true }).waitFor();
    await page.getByRole('button', { name: 'Add a leg' }).click();
    expect((await caret(page)).name).toMatch(/^legs\[\d\]\.lengthMm$/);
    await assertAccessible(page);
    await context.close();
  });

  it('on a phone, in the dark, words beside the fields can be read and nothing scrolls sideways', {
    timeout: 60_000,
  }, async () => {
    const { page, context } = await open(PHONE, edit);
    await page.emulateMedia({ colorScheme: 'dark' });
    await page.getByLabel('Length of leg 1').fill('732 in');
    await page.getByLabel('Rod for each hanger').fill('6 x');
    await page.getByText(/^Not drawn anew/).waitFor();
    expect(await besideOf(page, 'legs[0].lengthMm')).toBe(`= 61'-0"`);
    await assertAccessible(page);
    await assertNoSideScroll(page);
    const remove = await page.getByRole('button', { name: 'Remove leg 1', exact: true }).boundingBox();
    expect(remove?.height).toBeGreaterThanOrEqual(24); // WCAG 2.5.8
    await context.close();
  });

  it('words beside a field do not move the fields about', { timeout: 60_000 }, async () => {
    const { page, context } = await open(DESK);
    const length = page.getByLabel('Length of leg 1');
    const before = await length.boundingBox();
    await length.fill('seventy feet and a little more');
    await page.getByText('Not drawn anew: one entry is to put right.').waitFor();
    const after = await length.boundingBox();
    expect(Math.abs((after?.width ?? 0) - (before?.width ?? 0))).toBeLessThanOrEqual(2); // its edge is thicker
    await context.close();
  });

  it('a server that does not answer, or asks for a new sign-in, is said so, and what is typed stays', {
    timeout: 60_000,
  }, async () => {
    const { page, context } = await open(DESK);
    const length = page.getByLabel('Length of leg 1');
    await page.route('**/drawing', (route) => route.abort());
    await length.fill('70 ft');
    await page.getByText('Not drawn anew: the server did not answer').waitFor();
    await page.unroute('**/drawing');
    await length.fill('60 ft');
    await page.getByText(`60'-0" long`, { exact: true }).waitFor();
    await context.clearCookies();
    await length.fill('50 ft');
    await page.getByText('Not drawn anew: the server did not answer, or you are signed out.').waitFor();
    expect(await length.inputValue()).toBe('50 ft');
    expect(await figures(page)).toContain(`60'-0" long`);
    await context.close();
  });

  it('Enter outside the rows saves', { timeout: 60_000 }, async () => {
    const { page, context } = await open(DESK, edit);
    await page.getByLabel('Room or area').fill('Hall nine');
    await page.keyboard.press('Enter');
    await page.getByText(`${STRAIGHT} is saved and laid out anew.`).waitFor();
    await context.close();
  });

  it('without script the drawing comes by its button and the rows by their field, on a phone too', {
    timeout: 60_000,
  }, async () => {
    const { page, context } = await open(PHONE, blank, { javaScriptEnabled: false });
    await page.getByLabel('Run', { exact: true }).fill('X-1');
    await page.getByText('Paste legs from a spreadsheet').click();
    await page.getByLabel('Rows of legs').fill('30 ft\tleft\n20 ft\tnone');
    await page.getByRole('button', { name: 'Show drawing' }).click();
    expect(await page.getByLabel('Length of leg 2').inputValue()).toBe('20 ft');
    expect(await page.getByLabel('Rows of legs').inputValue()).toBe('');
    expect(await figures(page)).toContain(`50'-0" long`);
    await page.getByText('Paste legs from a spreadsheet').click();
    await page.getByLabel('Rows of legs').fill('30 ft\tsideways');
    await page.getByRole('button', { name: 'Save the run' }).click();
    expect(await page.getByText('"sideways" is not none, left, right, up or down.').count()).toBeGreaterThan(0);
    expect(await page.getByLabel('Rows of legs').inputValue()).toBe('30 ft\tsideways');
    expect(await page.getByLabel('Length of leg 2').inputValue()).toBe('20 ft');
    await context.close();
  });
});

async function figures(page: Page): Promise<string> {
  return (await page.locator('#drawn .figures').textContent()) ?? '';
}

async function besideOf(page: Page, name: string): Promise<string> {
  return (await page.locator(`td:has([name="${name}"]) .beside`).textContent()) ?? '';
}

async function caret(page: Page): Promise<{ name: string; value: string; at: number | null }> {
  return page.evaluate(() => {
    const { name, value, selectionStart } = document.activeElement as HTMLInputElement;
    return { name, value, at: selectionStart ?? null };
  });
}

/** What a person's Ctrl+V does, with text that a spreadsheet put on the clipboard. */
async function paste(page: Page, text: string): Promise<void> {
  await page.evaluate((copied) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData('text/plain', copied);
    document.activeElement?.dispatchEvent(
      new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }),
    );
  }, text);
}
