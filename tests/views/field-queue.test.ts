import { readFileSync } from 'node:fs';
import { createServer, type IncomingMessage, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { BrowserContext, Page } from 'playwright-core';
import { h } from 'preact';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { Button } from '../../views/components/button.tsx';
import { TextField } from '../../views/components/field.tsx';
import { Form } from '../../views/components/form.tsx';
import { renderPage } from '../../views/shell/page.tsx';
import { assertAccessible, CHROMIUM, openBrowser, PHONE, type Window } from '../browser/browser.ts';

/** A small server that takes a record once a submission, and can be told to refuse. */
interface Floor {
  readonly server: Server;
  readonly address: string;
  readonly records: Map<string, string>;
  posts: number;
  answer: 'take' | 'refuse' | 'fault';
}

function sheet(name: string, typed = '', fault?: string): string {
  return renderPage(
    {
      title: 'Joint J03',
      viewer: { name, roleWord: 'foreman' },
      trail: [],
      theme: 'field',
      csrf: 'fresh',
      assets: '/assets',
      asOf: new Date('2026-05-12T20:40:00Z'),
    },
    h(Form, {
      action: '/records',
      csrf: 'old',
      submissionId: 'sub-1',
      keep: { label: 'Joint J03, torque' },
      children: [
        h(TextField, { name: 'torque', label: 'Torque', value: typed, fault }),
        h(Button, { children: 'Record' }),
      ],
    }),
  );
}

async function openFloor(): Promise<Floor> {
  const floor = { records: new Map<string, string>(), posts: 0, answer: 'take' } as Floor;
  const server = createServer(async (request, response) => {
    if (request.url?.startsWith('/assets/')) {
      const name = request.url.slice('/assets/'.length);
      const type = name.endsWith('.js') ? 'text/javascript' : name.endsWith('.css') ? 'text/css' : 'image/svg+xml';
      response.writeHead(200, { 'content-type': type }).end(readFileSync(`views/assets/${name}`));
    } else if (request.method === 'POST') {
      floor.posts += 1;
      const form = new URLSearchParams(await bodyOf(request));
      if (floor.answer === 'fault') response.writeHead(500, HTML).end('<h1>Our fault, 8f2</h1>');
      else if (floor.answer === 'refuse')
        response.writeHead(422, HTML).end(sheet('R. Ibe', form.get('torque') ?? '', 'Torque 5 N·m is below 20 N·m.'));
      else {
        floor.records.set(form.get('submissionId') ?? '', `${form.get('torque')} ${request.headers['x-csrf-token']}`);
        response.writeHead(303, { location: '/done' }).end();
      }
    } else {
      const name = request.url === '/other' ? 'S. Okoro' : 'R. Ibe';
      const page = request.url === '/done' ? sheet(name).replaceAll('Joint J03', 'Recorded') : sheet(name);
      response.writeHead(200, HTML).end(page);
    }
  });
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  return Object.assign(floor, { server, address: `http://127.0.0.1:${(server.address() as AddressInfo).port}` });
}

const HTML = { 'content-type': 'text/html; charset=utf-8', 'content-security-policy': "default-src 'self'" };

async function bodyOf(request: IncomingMessage): Promise<string> {
  let body = '';
  for await (const chunk of request) body += chunk;
  return body;
}

describe.runIf(CHROMIUM !== undefined)('records of the floor without signal', () => {
  let window: Window;
  let floor: Floor;
  let phone: BrowserContext;
  let page: Page;

  beforeAll(async () => {
    window = await openBrowser();
  });
  afterAll(() => window.close());
  beforeEach(async () => {
    floor = await openFloor();
    ({ context: phone, page } = await window.person(PHONE));
    phone.setDefaultTimeout(6_000);
    await page.goto(`${floor.address}/`);
  });
  afterEach(async () => {
    await phone.close();
    floor.server.closeAllConnections();
    floor.server.close();
  });

  const record = async (torque: string) => {
    await page.getByLabel('Torque').fill(torque);
    await page.getByRole('button', { name: 'Record' }).click();
  };
  const unsent = () => page.locator('#unsent');

  it('a record goes at once while there is signal, with the token of the page', async () => {
    await record('21');
    await page.getByRole('heading', { name: 'Recorded' }).waitFor();
    expect(page.url()).toBe(`${floor.address}/done`);
    expect([...floor.records]).toEqual([['sub-1', '21 fresh']]);
    expect(await unsent().isHidden()).toBe(true);
  });

  it('a record typed without signal is kept, counted, and sent once when the signal is back', async () => {
    await phone.setOffline(true);
    await record('21');
    await page.getByText('1 record not sent yet').waitFor();
    expect(await page.getByText('Kept on this phone.').count()).toBe(1);
    expect(await page.getByRole('button', { name: 'Record' }).count()).toBe(0);
    await assertAccessible(page);
    await phone.setOffline(false);
    await unsent().waitFor({ state: 'hidden' });
    expect([...floor.records]).toEqual([['sub-1', '21 fresh']]);
    expect(floor.posts).toBe(1);
  });

  it('a kept record survives closing the page and goes when the page is opened again', async () => {
    await phone.setOffline(true);
    await record('21');
    await page.getByText('1 record not sent yet').waitFor();
    await page.close();
    await phone.setOffline(false);
    page = await phone.newPage();
    await page.goto(`${floor.address}/`);
    await expect.poll(() => floor.records.get('sub-1')).toBe('21 fresh');
  });

  it('nobody else sends it in their own name', async () => {
    await phone.setOffline(true);
    await record('21');
    await page.getByText('1 record not sent yet').waitFor();
    await page.close();
    await phone.setOffline(false);
    page = await phone.newPage();
    await page.goto(`${floor.address}/other`);
    await page.getByText('sign in as R. Ibe to send it').waitFor();
    await page.getByRole('button', { name: 'Try now' }).click();
    expect(floor.posts).toBe(0);
  });

  it('a refusal shows beside the field with what was typed, and nothing is kept', async () => {
    floor.answer = 'refuse';
    await record('5');
    await page.getByText('Torque 5 N·m is below 20 N·m.').waitFor();
    expect(await page.getByLabel('Torque').inputValue()).toBe('5');
    expect(await unsent().isHidden()).toBe(true);
  });

  it('a kept record that is refused later says why, and its form is filled in again', async () => {
    await phone.setOffline(true);
    await record('5');
    await page.getByText('1 record not sent yet').waitFor();
    floor.answer = 'refuse';
    await phone.setOffline(false);
    await unsent().getByText('Refused: Torque 5 N·m is below 20 N·m.').waitFor();
    await unsent().getByRole('link', { name: 'Put it right' }).click();
    await expect.poll(() => page.getByLabel('Torque').inputValue()).toBe('5');
    floor.answer = 'take';
    await record('22');
    await page.getByRole('heading', { name: 'Recorded' }).waitFor();
    expect(floor.records.get('sub-1')).toBe('22 fresh');
    expect(await unsent().isHidden()).toBe(true);
  });

  it('a fault of the server loses nothing', async () => {
    floor.answer = 'fault';
    await record('21');
    await expect.poll(() => page.evaluate(() => localStorage.getItem('jobbook.unsent'))).toContain('"21"');
    await page.waitForURL('**/records'); // the browser goes where the record was sent
    await page.goto(`${floor.address}/`);
    await page.getByText('Refused: Our fault, 8f2').waitFor();
    await unsent().getByText('Throw away').first().click();
    await page.getByRole('button', { name: 'Yes, throw away what was typed' }).click();
    await unsent().waitFor({ state: 'hidden' });
  });
});
