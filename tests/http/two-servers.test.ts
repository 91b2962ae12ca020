import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { buildApp } from '../../src/app.ts';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import type { App } from '../../src/http/app-type.ts';
import { openDatabase } from '../../src/store/database.ts';
import { type Stage, stage } from '../support/cast.ts';
import { migratedUrl } from '../support/databases.ts';

// Two server processes' worth of service on one PostgreSQL database: each has its own connections, caches and feed.
let first: Stage;
let second: App;
let firstUrl: string;
let secondUrl: string;
let projectId: string;
let close: () => Promise<void>;

beforeAll(async () => {
  const url = await migratedUrl('postgres');
  const [here, there] = [await openDatabase(url), await openDatabase(url)];
  first = await stage(here);
  second = await buildApp({
    config: { logLevel: 'silent', tls: null, trustProxy: false, publicUrl: null },
    context: { database: there, clock: () => new Date(), newId: randomUUID },
    sessionSecret: 'a secret for tests alone, long enough',
  });
  firstUrl = await first.app.listen({ host: '127.0.0.1', port: 0 });
  secondUrl = await second.listen({ host: '127.0.0.1', port: 0 });
  const made = await first.as('ada').post('/api/v1/job-documents').send(demoJob());
  projectId = made.body.id;
  await first.joinAll(projectId);
  close = async () => {
    first.app.server.closeAllConnections();
    second.server.closeAllConnections();
    await first.app.close();
    await second.close();
    await here.close();
    await there.close();
  };
});
afterAll(() => close());

const send = (
  base: string,
  path: string,
  init: { method?: string; headers?: Record<string, string>; body?: unknown } = {},
) =>
  fetch(`${base}/api/v1${path}`, {
    method: init.method ?? 'GET',
    headers: { authorization: `Bearer ${first.tokenOf('olive')}`, 'content-type': 'application/json', ...init.headers },
    ...(init.body === undefined ? {} : { body: JSON.stringify(init.body) }),
  });

it('of two writers on one reading, at two servers, one is kept and the other is told what stands there', async () => {
  const { items } = (await (await send(firstUrl, `/projects/${projectId}/levels`)).json()) as {
    items: { id: string; version: number; document: object }[];
  };
  const level = items[0];
  if (level === undefined) throw new Error('the demo has no levels');
  const write = (base: string, name: string) =>
    send(base, `/projects/${projectId}/levels/${level.id}`, {
      method: 'PUT',
      headers: { 'if-match': `"${level.version}"` },
      body: { ...level.document, name },
    });
  const answers = await Promise.all([write(firstUrl, 'East hall'), write(secondUrl, 'West hall')]);
  expect(answers.map((answer) => answer.status).sort()).toEqual([200, 412]);
  const stands = (await (await send(secondUrl, `/projects/${projectId}/levels/${level.id}`)).json()) as {
    document: { name: string };
  };
  const kept = answers[0]?.status === 200 ? 'East hall' : 'West hall';
  expect(stands.document.name).toBe(kept);
});

it('the same create sent to both servers at once makes one job', async () => {
  const heading = { ...demoJob().project, number: 'TWICE' };
  const make = (base: string) =>
    fetch(`${base}/api/v1/projects`, {
      method: 'POST',
      headers: {
        authorization: `Bearer ${first.tokenOf('ada')}`,
        'content-type': 'application/json',
        'idempotency-key': 'both',
      },
      body: JSON.stringify(heading),
    });
  const answers = await Promise.all([make(firstUrl), make(secondUrl)]);
  expect(answers.map((answer) => answer.status)).toEqual([201, 201]);
  const [one, other] = (await Promise.all(answers.map((answer) => answer.json()))) as { id: string }[];
  expect(one?.id).toBe(other?.id);
});

it('whoever watches at one server hears within two seconds what changed at the other', async () => {
  const watching = new AbortController();
  const events = await fetch(`${firstUrl}/jobs/${projectId}/events`, {
    headers: { authorization: `Bearer ${first.tokenOf('frank')}` },
    signal: watching.signal,
  });
  expect(events.headers.get('content-type')).toContain('text/event-stream');
  const reader = events.body?.pipeThrough(new TextDecoderStream()).getReader();
  await new Promise((resolve) => setTimeout(resolve, 700)); // the feed has had its first look
  const sent = Date.now();
  const release = await send(secondUrl, `/projects/${projectId}/releases`, { method: 'POST', body: {} });
  expect(release.status).toBe(201);
  const done = Date.now();
  let heard = '';
  while (!heard.includes('event: job-changed')) heard += (await reader?.read())?.value ?? '';
  expect(Date.now() - done).toBeLessThan(2000);
  expect(done).toBeGreaterThan(sent);
  watching.abort();
});
