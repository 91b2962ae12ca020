import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { calibrateBackground, setBackground } from '../../src/actions/backgrounds.ts';
import { demoLabourBook } from '../../src/document/demo/demo-labour-book.ts';
import { openDatabase } from '../../src/store/database.ts';
import { migratedUrl } from '../support/databases.ts';
import { crossPng } from '../support/pictures.ts';
import {
  assertAccessible,
  assertAccessibleByDayAndNight,
  assertNoSideScroll,
  CHROMIUM,
  DESK,
  openBrowser,
  PHONE,
  type Window,
} from './browser.ts';
import { hangPieces, openSite, type Site, setHangers } from './field-site.ts';

const RUN = 'F1-R01-A';
const CORNER = 'F3-R06-A';
const DRAFT = 'F4-R06-B';
const TIGHT =
  '/what-if?conditions[0].level=*&conditions[0].congestion=tight&stock[0].type=demo-250A-3PN&stock[0].lengthsMm=10%20ft';

describe.skipIf(CHROMIUM === undefined)('the office, in a real browser', () => {
  let window: Window;
  let site: Site;
  let runId: (key: string) => Promise<string>;
  let levelId: (key: string) => Promise<string>;
  beforeAll(async () => {
    const database = await openDatabase(await migratedUrl('sqlite'));
    site = await openSite(database, { unreleased: [DRAFT] });
    await hangPieces(site, RUN, 2);
    await setHangers(site, RUN, 3);
    runId = async (key) =>
      (await database.db.run.findFirstOrThrow({ where: { projectId: site.jobId, key }, select: { id: true } })).id;
    levelId = async (key) =>
      (await database.db.level.findFirstOrThrow({ where: { projectId: site.jobId, key }, select: { id: true } })).id;
    await layPicture(site, await levelId('F1'));
    window = await openBrowser();
    return async () => {
      await window.close();
      await site.close();
      await database.close();
    };
  });
  const job = (rest: string) => `${site.address}/jobs/${site.jobId}${rest}`;

  /** A labour book of the shelf that says other hours than the job's. */
  const shelved = async () => {
    const known = await site.context.database.db.shelvedLabourBook.findFirst({ select: { id: true } });
    if (known !== null) return known.id;
    const row = { id: site.context.newId(), name: 'Shop hours', version: '2', note: 'Invented', currency: 'USD' };
    const document = { ...demoLabourBook(), nonProductivePercent: 9 };
    const made = { madeBy: site.viewer('olive').userId, madeAt: site.context.clock() };
    await site.context.database.db.shelvedLabourBook.create({ data: { ...row, ...made, document } });
    return row.id;
  };

  const everyPage = async (): Promise<string[]> => {
    const [run, corner, draft] = await Promise.all([RUN, CORNER, DRAFT].map(runId));
    return [
      `${site.address}/jobs`,
      `${site.address}/jobs/new`,
      `${site.address}/me`,
      `${site.address}/docs`,
      job('/floors'),
      job('/floors?floor=F1'),
      job(`/floors/${await levelId('F1')}/plan`),
      job(`/floors/${await levelId('F1')}/background`),
      job(`/floors/${await levelId('F3')}/plan?show=${CORNER}`),
      job(`/runs/${run}`),
      job(`/runs/${corner}`),
      job(`/runs/${draft}`),
      job(`/runs/${run}/revisions?a=1&b=1`),
      job('/steps'),
      job(`/runs/${corner}/edit`),
      job(`/pieces/${(await site.run(CORNER)).pieces[2]?.id}/substitution`),
      job('/runs/new'),
      job('/runs/several?level=F1'),
      job(`/runs/several/copies?run=${CORNER}`),
      job(`/runs/several/partners?run=${DRAFT}`),
      job('/runs/several/changes?level=F2'),
      job('/takeoff'),
      job('/takeoff?by=run&level=F3'),
      job('/takeoff/order'),
      job('/takeoff/rules'),
      job('/takeoff/by-hand'),
      job('/takeoff/places?of=order&item=section&kind=stock&length=487680&type=demo-250A-3PN&level=F1'),
      job('/hours'),
      job('/hours?activity=joint&level=F2'),
      job('/hours?level=F2'),
      job('/labour-book/shelf/shipped'),
      job('/bid'),
      job('/bid/quotes'),
      job('/bid/costs'),
      job('/bid/offer'),
      job('/labour-book'),
      job('/labour-book/shelf'),
      job(`/labour-book/shelf/${await shelved()}`),
      job('/what-if'),
      job(TIGHT),
      job('/crews'),
      job('/lists'),
      job('/members'),
      job('/settings'),
      job('/settings/levels/new'),
      job('/settings/types/new'),
      job('/audit'),
    ];
  };

  it.each([
    ['on a phone', PHONE],
    ['on a desk', DESK],
  ] as const)(
    'every page can be read by everybody %s, in daylight and in the dark',
    {
      timeout: 180_000,
    },
    async (_name, size) => {
      const { page, context } = await window.person(size);
      await site.signIn(page, 'olive');
      for (const address of await everyPage()) {
        const answer = await page.goto(address);
        expect(answer?.status(), address).toBe(200);
        await assertAccessibleByDayAndNight(page);
        await assertNoSideScroll(page);
      }
      await context.close();
    },
  );

  it('opened workings, asked questions and refused forms can be read by everybody too', {
    timeout: 120_000,
  }, async () => {
    const { page, context } = await window.person(PHONE);
    await site.signIn(page, 'olive');
    await page.goto(job('/hours'));
    await openAll(page);
    await assertAccessible(page);
    await assertNoSideScroll(page);
    for (const list of ['/takeoff', '/takeoff/order?level=F3']) {
      await page.goto(job(list));
      await openAll(page);
      await assertNoSideScroll(page);
    }
    await page.goto(job(`/runs/${await runId(DRAFT)}/edit`));
    await page.getByLabel('Length of leg 1').fill('21336');
    await page.getByRole('button', { name: 'Save the run' }).click();
    expect(await page.getByText('If you meant millimetres, write 21336 mm.').count()).toBeGreaterThan(0);
    await assertAccessible(page);
    await assertNoSideScroll(page);
    await page.getByLabel('Length of leg 1').fill('70 ft');
    await page.getByLabel('Rod for each hanger').fill('10.6');
    await page.getByRole('button', { name: 'Save the run' }).click();
    expect(await page.getByText('Worth a second look').count()).toBe(1);
    await assertAccessible(page);
    await context.close();
  });

  it('what one records, another sees within two seconds', {
    timeout: 60_000,
  }, async () => {
    const [office, foreman] = [await window.person(DESK), await window.person(PHONE)];
    const floors = `/jobs/${site.jobId}/floors`;
    const listening = [office, foreman].map(({ page }) =>
      page.waitForResponse((answer) => answer.url().includes('/events?')),
    );
    await site.signIn(office.page, 'olive', floors);
    await site.signIn(foreman.page, 'frank', floors);
    await Promise.all(listening);
    const row = (page: Page) => page.locator('tr', { has: page.getByRole('link', { name: RUN, exact: true }) });
    await office.page.getByText('3 of 8').first().waitFor();
    expect(await row(foreman.page).textContent()).toContain('3 of 8');
    await office.page.waitForTimeout(1_200); // the feed asks twice a second, and tells of what comes after its first answer
    const support = (await site.run(RUN)).supports[3];
    await site.record('ines', {
      subject: 'support',
      subjectId: support?.id ?? '',
      body: { kind: 'support-set', rodPlumb: true, loadNut: true, lockNut: true },
    });
    const began = Date.now();
    await Promise.all([office.page, foreman.page].map((page) => row(page).getByText('4 of 8').waitFor()));
    expect(Date.now() - began).toBeLessThan(2_000);
    await office.context.close();
    await foreman.context.close();
  });

  it('a foreman lands on the floors and is on his own in one tap', async () => {
    const { page, context } = await window.person(PHONE);
    await site.signIn(page, 'frank', `/jobs/${site.jobId}`);
    expect(new URL(page.url()).pathname).toBe(`/jobs/${site.jobId}/floors`);
    const link = page.getByRole('link', { name: 'Floor 2', exact: true });
    const box = await link.boundingBox();
    expect(box?.height).toBeGreaterThanOrEqual(44);
    await link.click();
    expect(new URL(page.url()).pathname).toMatch(/\/floors\/[0-9a-f-]{36}$/);
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toContain('Floor 2');
    await context.close();
  });

  it('two presses on a picture and a key set it in place under the plan', { timeout: 60_000 }, async () => {
    const { page, context } = await window.person(PHONE);
    const base = `/jobs/${site.jobId}/floors/${await levelId('F2')}`;
    await site.signIn(page, 'olive', `${base}/background`);
    const file = { name: 'floor-2.png', mimeType: 'image/png', buffer: await crossPng(1000, 800, CROSSES) };
    await page.getByLabel('Picture or PDF').setInputFiles(file);
    await page.getByRole('button', { name: 'Put it under the plan' }).click();
    const picture = page.locator('svg.picture');
    await picture.scrollIntoViewIfNeeded();
    const size = await picture.boundingBox();
    const press = ({ x, y }: { x: number; y: number }) =>
      picture.click({ position: { x: (x * (size?.width ?? 0)) / 1000, y: (y * (size?.width ?? 0)) / 1000 } });
    await press(CROSSES[0]);
    await press(CROSSES[1]);
    const pixel = async (label: string) => Number(await page.getByLabel(label).inputValue());
    // On a phone a dot of the screen is nearly three pixels of this picture: keys and fields set them to the pixel.
    expect(Math.abs((await pixel('A, pixels from the left')) - CROSSES[0].x)).toBeLessThanOrEqual(3);
    expect(Math.abs((await pixel('B, pixels from the top')) - CROSSES[1].y)).toBeLessThanOrEqual(3);
    const before = await pixel('B, pixels from the left');
    await page.getByRole('region', { name: 'floor-2.png, scrolls' }).focus();
    await page.keyboard.press('ArrowLeft');
    expect(await pixel('B, pixels from the left')).toBe(before - 1);
    await page.getByLabel('A, pixels from the left').fill(String(CROSSES[0].x));
    await page.getByLabel('A, pixels from the top').fill(String(CROSSES[0].y));
    await page.getByLabel('B, pixels from the left').fill(String(CROSSES[1].x));
    await page.getByLabel('B, pixels from the top').fill(String(CROSSES[1].y));
    await page.getByLabel('A, east of the origin').fill('0');
    await page.getByLabel('A, north of the origin').fill('0');
    await page.getByLabel('Distance from A to B').fill('70 ft');
    await page.getByRole('button', { name: 'Set it in place' }).click();
    expect(await page.getByText('The picture is set in place under the plan.').count()).toBe(1);
    await page.goto(`${site.address}${base}/plan`);
    const shown = await page.locator('image.under').boundingBox();
    // By its attribute: a browser counts the stroke of the bar to its box.
    const bar = Number(await page.locator('svg.plan > rect').nth(1).getAttribute('width'));
    const feet = Number(/(\d+) ft/.exec((await page.locator('svg.plan > text').last().textContent()) ?? '')?.[1]);
    const pixelsPerFoot = bar / feet;
    // 800 pixels of the picture, from cross to cross, are 70 ft: the whole of it is 1000 / 800 as wide.
    expect((shown?.width ?? 0) / pixelsPerFoot).toBeCloseTo((70 * 1000) / 800, 0);
    await context.close();
  });

  it('a list goes from the clipboard to the design without any script', { timeout: 60_000 }, async () => {
    const { page, context } = await window.person(DESK, { javaScriptEnabled: false });
    await site.signIn(page, 'olive', `/jobs/${site.jobId}/lists`);
    const runs = page.locator('#runs');
    await runs
      .getByLabel('Rows of runs')
      .fill('run\tlevel\ttype\tconductor side\tleg lengths\nW1\tF1\tdemo-250A-3PN\tmiddle\t70 ft');
    await runs.getByRole('button', { name: 'Read the list' }).click();
    expect(await page.getByText('"middle" is not left or right.').count()).toBe(1);
    await runs
      .getByLabel('Rows of runs')
      .fill('run\tlevel\ttype\tconductor side\tleg lengths\nW1\tF1\tdemo-250A-3PN\tleft\t70 ft');
    await runs.getByRole('button', { name: 'Read the list' }).click();
    await page.getByRole('button', { name: 'Make one run' }).click();
    expect(await page.getByText('1 run is made and laid out.').count()).toBe(1);
    await page.getByRole('link', { name: 'W1', exact: true }).first().click();
    await page.getByRole('link', { name: 'Edit' }).click();
    await page.getByLabel('One hanger may carry').fill('330 lb');
    await page.getByLabel('Rod for each hanger').fill(`6'-9"`);
    await page.getByRole('button', { name: 'Save the run' }).click();
    expect(await page.getByText('W1 is saved and laid out anew.').count()).toBe(1);
    await page.getByRole('button', { name: 'Release W1' }).click();
    expect(await page.getByText('Revision 1 is released to the floor.').count()).toBe(1);
    await context.close();
  });
});

const CROSSES = [
  { x: 100, y: 700 },
  { x: 900, y: 700 },
] as const;

/** A picture under a level, set in place: 100 pixels are 3 m. */
async function layPicture({ context, viewer, jobId }: Site, level: string): Promise<void> {
  const sent = { bytes: await crossPng(1000, 800, CROSSES), name: 'floor-1.png', page: 1 };
  const { version } = await setBackground(context, viewer('olive'), jobId, level, null, sent, null);
  await calibrateBackground(context, viewer('olive'), jobId, level, version, {
    points: [
      { pixelX: 100, pixelY: 700, xMm: 0, yMm: 0 },
      { pixelX: 900, pixelY: 700 },
    ],
    distanceMm: 24_000,
  });
}

async function openAll(page: Page): Promise<void> {
  await page.evaluate(() => {
    for (const details of document.querySelectorAll('details')) details.open = true;
  });
}
