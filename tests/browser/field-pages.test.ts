import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { pairsOf } from '../../src/domain/quality/insulation/pairs.ts';
import { openDatabase } from '../../src/store/database.ts';
import { migratedUrl } from '../support/databases.ts';
import { assertAccessible, assertNoSideScroll, CHROMIUM, DESK, openBrowser, PHONE, type Window } from './browser.ts';
import {
  closeEnds,
  hangPieces,
  inAYear,
  makeJoints,
  openSite,
  type Site,
  type SitePerson,
  setHangers,
  setTapOffs,
} from './field-site.ts';

const BUILT = 'F2-R01-A';
const HALF = 'F2-R01-B';
const TROUBLED = 'F2-R02-A';
const FRESH = 'F2-R03-A';
const CORNER = 'F3-R06-A';
const DRAFT = 'F2-R06-B';

/** A floor in the middle of the work: one run built and tested, one half, one in trouble, the others untouched. */
async function halfBuilt(site: Site): Promise<void> {
  await setHangers(site, BUILT);
  await hangPieces(site, BUILT);
  await makeJoints(site, BUILT);
  await setTapOffs(site, BUILT, 2);
  await closeEnds(site, BUILT);
  const built = await site.run(BUILT);
  await site.record('quinn', {
    subject: 'run',
    subjectId: built.id,
    body: {
      kind: 'insulation-test',
      rule: 'acceptance-1000ft',
      testVoltageV: 1000,
      instrument: { id: 'IR-02', calibrationDue: inAYear(new Date()) },
      surfaceTempC: 24,
      ambientTempC: 24,
      humidityPercent: 50,
      readings: pairsOf({ poles: 3, neutral: 'full' }).map((pair) => ({
        pair,
        reading: { kind: 'value', comparator: '=', value: 650, unit: 'MΩ', written: '650' },
      })),
    },
  });
  await setHangers(site, HALF, 3);
  await hangPieces(site, HALF, 2);
  await makeJoints(site, HALF, { count: 1, steps: 7 });
  await hangPieces(site, TROUBLED, 2);
  await makeJoints(site, TROUBLED, { count: 1 });
  const troubled = await site.run(TROUBLED);
  await site.record('frank', {
    subject: 'piece',
    subjectId: troubled.pieces[2]?.id ?? '',
    body: { kind: 'piece-quarantined', reason: 'Far end crushed in the crate' },
  });
  await site.record('frank', {
    subject: 'joint',
    subjectId: troubled.joints[0]?.id ?? '',
    body: { kind: 'joint-reopened', reason: 'Pole N stood proud by 2 mm', fromStep: 5 },
  });
}

describe.runIf(CHROMIUM !== undefined)('the pages of the floor', () => {
  let window: Window;
  let site: Site;

  beforeAll(async () => {
    const database = await openDatabase(await migratedUrl('sqlite'));
    site = await openSite(database, { unreleased: [DRAFT] });
    await halfBuilt(site);
    window = await openBrowser();
    return async () => {
      await window.close();
      await site.close();
      await database.close();
    };
  }, 120_000);

  const paths = async (): Promise<readonly string[]> => {
    const job = `/jobs/${site.jobId}`;
    const [built, half, troubled, corner] = await Promise.all([BUILT, HALF, TROUBLED, CORNER].map(site.run));
    if (!built || !half || !troubled || !corner) throw new Error('the demo lacks a run');
    const { db } = site.context.database;
    const draft = await db.run.findFirstOrThrow({ where: { key: DRAFT }, select: { id: true, levelId: true } });
    const test = await db.inspection.findFirstOrThrow({ where: { kind: 'insulation-test' }, select: { id: true } });
    const step = await db.inspection.findFirstOrThrow({ where: { kind: 'joint-step' }, select: { id: true } });
    const elbow = corner.pieces.find(({ kind }) => kind === 'elbow');
    return [
      `${job}/floors/${built.levelId}`,
      ...[built, half, troubled, corner].map((run) => `${job}/floors/${run.levelId}/runs/${run.id}`),
      `${job}/floors/${draft.levelId}/runs/${draft.id}`,
      ...[built.joints[0], half.joints[0], half.joints[1], half.joints[3], troubled.joints[0]].map(
        (joint) => `${job}/joints/${joint?.id}`,
      ),
      ...[built.pieces[0], half.pieces[3], troubled.pieces[2], elbow].map((piece) => `${job}/pieces/${piece?.id}`),
      ...[built.supports[0], half.supports[0], half.supports[5]].map((support) => `${job}/hangers/${support?.id}`),
      ...[built.taps[0], half.taps[0], half.taps[19]].map((tap) => `${job}/tap-offs/${tap?.id}`),
      `${job}/runs/${built.id}/ends`,
      `${job}/runs/${half.id}/ends`,
      `${job}/runs/${built.id}/insulation`,
      `${job}/runs/${built.id}/insulation/blank`,
      `${job}/joints/${half.joints[0]?.id}/blank`,
      `${job}/inspections`,
      `${job}/inspections?kind=insulation-test`,
      `${job}/inspections/tools`,
      `${job}/inspections/tools?tool=IR-02&lastGood=2026-01-01`,
      `${job}/inspections/${test.id}`,
      `${job}/inspections/${step.id}`,
    ];
  };

  /** Reads every page with everything on it unfolded. */
  const readAll = async (person: SitePerson, size: typeof PHONE, scheme: 'light' | 'dark' = 'light') => {
    const { context, page } = await window.person(size);
    await page.emulateMedia({ colorScheme: scheme });
    await site.signIn(page, person);
    for (const path of await paths()) {
      const answer = await page.goto(`${site.address}${path}`);
      expect(answer?.status(), path).toBe(200);
      await unfold(page);
      await assertAccessible(page);
      await assertNoSideScroll(page);
    }
    await context.close();
  };
  const unfold = (page: Page) =>
    page.evaluate(() => {
      for (const fold of document.querySelectorAll('main details')) fold.setAttribute('open', '');
    });

  it.each([
    ['installer', 'ines', PHONE, 'light'],
    ['foreman', 'frank', PHONE, 'dark'],
    ['inspector', 'quinn', DESK, 'light'],
    ['reader', 'rita', PHONE, 'light'],
  ] as const)(
    'axe finds nothing and no page scrolls sideways for the %s',
    async (_, person, size, scheme) => {
      await readAll(person, size, scheme);
    },
    180_000,
  );

  it('whatever is pressed on a card is at least 44 px high', async () => {
    const { context, page } = await window.person(PHONE);
    await site.signIn(page, 'ines');
    for (const path of (await paths()).filter((one) => !/blank|inspections/.test(one))) {
      await page.goto(`${site.address}${path}`);
      await unfold(page);
      const small = await page.evaluate(() => {
        const pressed = document.querySelectorAll(
          'main :is(.button, summary, .rows a, .floor-run, .floor-next, label:has(input), input:not([type=checkbox], [type=radio], [type=hidden]), select, textarea)',
        );
        return [...pressed]
          .filter((one) => one.checkVisibility() && one.getBoundingClientRect().height < 44)
          .map((one) => `${one.tagName} ${one.textContent?.trim().slice(0, 40)}`);
      });
      expect(small, path).toEqual([]);
    }
    await context.close();
  }, 120_000);

  it('a measured hanger is judged while it is typed, and refused where it breaks a rule', async () => {
    const { context, page } = await window.person(PHONE);
    const run = await site.run(FRESH);
    await site.signIn(page, 'ines', `/jobs/${site.jobId}/hangers/${run.supports[1]?.id}`);
    await page.getByLabel('Measured from the feed').fill('12.5 ft');
    await page.getByText(`Not at 12'-6".`).waitFor();
    await assertAccessible(page);
    await page.getByLabel('Measured from the feed').fill('11 ft');
    await page.getByText(`OK at 11'-0".`).waitFor();
    for (const label of ['Rod plumb', 'Load nut set', 'Lock nut set']) await page.getByLabel(label).check();
    await page.getByRole('button', { name: 'H02 is set' }).click();
    await page.getByText('H02 is set. This is the next one.').waitFor();
    expect((await site.run(FRESH)).supports[1]?.measuredU80).toBe(11 * 12 * 16 * 127);
    await context.close();
  });

  it('the dew point is worked while air and humidity are typed', async () => {
    const { context, page } = await window.person(PHONE);
    const run = await site.run(BUILT);
    await site.signIn(page, 'quinn', `/jobs/${site.jobId}/runs/${run.id}/insulation`);
    await page.getByLabel('Surface of the housing').fill('19');
    await page.getByLabel('Air', { exact: true }).fill('24');
    await page.getByLabel('Relative humidity').fill('70');
    await page.getByText('Hold.').waitFor();
    await page.getByText('Dew point 18.2 °C').waitFor();
    await context.close();
  });

  it('several hangers are ticked on one walk without script', async () => {
    const { context, page } = await window.person(PHONE, { javaScriptEnabled: false });
    const run = await site.run(FRESH);
    await site.signIn(page, 'ines', `/jobs/${site.jobId}/floors/${run.levelId}/runs/${run.id}`);
    const walk = page.locator('#walk-hangers');
    for (const mark of ['H03', 'H04']) await walk.getByText(mark, { exact: true }).click();
    for (const label of ['Rod plumb', 'Load nut set', 'Lock nut set']) await walk.getByLabel(label).check();
    await walk.getByRole('button', { name: 'The ticked hangers are set' }).click();
    await page.getByText('2 recorded.').waitFor();
    expect((await site.run(FRESH)).supports.map(({ state }) => state).slice(0, 5)).toEqual([
      'planned',
      'set',
      'set',
      'set',
      'planned',
    ]);
    await context.close();
  });

  it('what somebody unfolded stays unfolded while others record', async () => {
    const { context, page } = await window.person(PHONE);
    const run = await site.run(HALF);
    await site.signIn(page, 'frank', `/jobs/${site.jobId}/floors/${run.levelId}/runs/${run.id}`);
    const taps = page.locator('#taps');
    await taps.locator('summary').click();
    await taps.getByText('T07').waitFor();
    await page.waitForTimeout(1_000); // the page listens by now
    await site.record('ines', {
      subject: 'support',
      subjectId: run.supports[4]?.id ?? '',
      body: { kind: 'support-set', rodPlumb: true, loadNut: true, lockNut: true },
    });
    await page.locator('#hangers').getByText('4 of 8 set').waitFor();
    expect(await taps.getByText('T07').isVisible()).toBe(true);
    await context.close();
  });

  it('a floor with all its runs comes in well under 60 kB', async () => {
    const { context, page } = await window.person(PHONE);
    const run = await site.run(BUILT);
    await site.signIn(page, 'frank');
    const answer = await page.goto(`${site.address}/jobs/${site.jobId}/floors/${run.levelId}`);
    const sizes = await answer?.request().sizes();
    expect(sizes?.responseBodySize).toBeGreaterThan(1_000);
    expect(sizes?.responseBodySize).toBeLessThan(20_000);
    await context.close();
  });
});
