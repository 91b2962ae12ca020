// A real Chromium on a real server, for journeys. Where no Chromium is found the journeys are not run, and it is said so.
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import os from 'node:os';
import path from 'node:path';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { expect } from 'vitest';

const PLACES = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];
export const CHROMIUM = PLACES.find((place) => existsSync(place));
if (CHROMIUM === undefined)
  process.stdout.write(
    'No Chromium was found, so the browser journeys are NOT run here. Debian: apt-get install chromium.\n',
  );

export const PHONE = { width: 390, height: 844 };
export const DESK = { width: 1440, height: 900 };

const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];
const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

export interface Window {
  readonly browser: Browser;
  /** A person's own window: cookies apart from everybody else's. */
  readonly person: (
    viewport: { width: number; height: number },
    options?: { javaScriptEnabled?: boolean },
  ) => Promise<{ context: BrowserContext; page: Page }>;
  readonly close: () => Promise<void>;
}

export async function openBrowser(): Promise<Window> {
  const profile = mkdtempSync(path.join(os.tmpdir(), 'jobbook-chromium-'));
  const browser = await chromium.launch({
    executablePath: CHROMIUM ?? '',
    args: FLAGS,
    env: { ...process.env, HOME: profile },
  });
  return {
    browser,
    person: async (viewport, options = {}) => {
      const context = await browser.newContext({ viewport, bypassCSP: false, ...options });
      return { context, page: await context.newPage() };
    },
    close: async () => {
      await browser.close();
      rmSync(profile, { recursive: true, force: true });
    },
  };
}

/** The rules of axe whose answer depends on the colours, and so on light or dark. */
const COLOUR_RULES = ['color-contrast', 'link-in-text-block'];

/** Fails with what axe found on the page, in words. */
export async function assertAccessible(page: Page): Promise<void> {
  await page.evaluate(axeSource);
  await refuseViolations(page, {});
}

/** The same in both schemes of one loaded page: every rule in daylight, then those of colour in the dark. */
export async function assertAccessibleByDayAndNight(page: Page): Promise<void> {
  await page.emulateMedia({ colorScheme: 'light' });
  await assertAccessible(page);
  await page.emulateMedia({ colorScheme: 'dark' });
  await refuseViolations(page, { runOnly: COLOUR_RULES });
}

async function refuseViolations(page: Page, options: { runOnly?: string[] }): Promise<void> {
  const violations = await page.evaluate(
    async (chosen) => {
      const { axe } = globalThis as unknown as {
        axe: {
          run(options: object): Promise<{
            violations: { id: string; nodes: { target: unknown[]; failureSummary: string }[] }[];
          }>;
        };
      };
      const found = await axe.run(chosen);
      return found.violations.map(
        (violation) =>
          `${violation.id}: ${violation.nodes.map((node) => `${node.target.join(' ')} ${node.failureSummary}`).join('; ')}`,
      );
    },
    { ...options, resultTypes: ['violations'] },
  );
  expect(violations, `axe on ${page.url()}`).toEqual([]);
}

/** A phone must never scroll sideways. */
export async function assertNoSideScroll(page: Page): Promise<void> {
  const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  expect(over, `sideways scroll on ${page.url()}`).toBeLessThanOrEqual(0);
}
