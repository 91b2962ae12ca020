import { beforeAll, expect, it } from 'vitest';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import { type Stage, stage } from '../support/cast.ts';
import { forEachDatabase } from '../support/databases.ts';
import { fieldsOf, readPage } from '../support/page.ts';

forEachDatabase((open) => {
  let play: Stage;
  let jobId: string;
  beforeAll(async () => {
    play = await stage(await open());
    jobId = (await play.as('ada').post('/api/v1/job-documents').send(demoJob())).body.id;
    await play.joinAll(jobId);
    return () => play.app.close();
  });
  const get = (person: Parameters<Stage['as']>[0], path: string) => play.as(person).get(path);
  const post = (person: Parameters<Stage['as']>[0], path: string, fields: Record<string, string>) =>
    play.as(person).post(path).type('form').send(fields);
  const job = (rest: string) => `/jobs/${jobId}${rest}`;

  it('an account is made with a link that is shown once, that no copy keeps, and that lets its owner in', async () => {
    const made = await post('ada', '/accounts', {
      name: 'Nell Reed',
      email: 'nell@plover-quay.example',
      submissionId: 'n1',
    });
    expect(made.status).toBe(200);
    expect(made.headers['cache-control']).toBe('no-store');
    const link = /\/invitation\/[\w-]{20,}/.exec(made.text)?.[0] ?? '';
    expect(link).not.toBe('');
    const again = await post('ada', '/accounts', {
      name: 'Nell Reed',
      email: 'nell@plover-quay.example',
      submissionId: 'n1',
    });
    expect(again.text).not.toContain(link);
    expect((await get('ada', '/accounts')).text).not.toContain(link);
    const taken = await post('ada', '/accounts', {
      name: 'Nell',
      email: 'NELL@plover-quay.example',
      submissionId: 'n2',
    });
    expect(taken.status).toBe(409);
    expect(taken.text).toContain('id="f-email-fault"');
    expect(readPage((await get('stan', link)).text)).toContain('Set your password');
  });

  it('an account is closed and opened again; the last administrator is kept', async () => {
    const page = (await get('ada', '/accounts')).text;
    const formOf = (name: string): { action: string; version?: string } => {
      const row = new RegExp(`<tr[^>]*>(?:(?!</tr>)[\\s\\S])*?${name}[\\s\\S]*?</tr>`).exec(page)?.[0] ?? '';
      return { action: /action="(\/accounts\/[^"/]+)"/.exec(row)?.[1] ?? '', ...fieldsOf(row) };
    };
    const rita = formOf('Rita Moor');
    const closed = await post('ada', rita.action, { version: rita.version ?? '', disabled: 'yes' });
    expect(closed.status).toBe(303);
    expect((await get('rita', '/jobs')).status).toBe(303); // signed out: sent to the sign-in form
    const stale = await post('ada', rita.action, { version: rita.version ?? '', disabled: 'no' });
    expect(stale.status).toBe(412);
    const opened = await post('ada', rita.action, { version: String(Number(rita.version) + 1), disabled: 'no' });
    expect(opened.status).toBe(303);
    const ada = formOf('Ada Marsh');
    const kept = await post('ada', ada.action, { version: ada.version ?? '', disabled: 'yes' });
    expect(kept.status).toBe(409);
    expect(readPage(kept.text)).toContain('make another administrator first');
    expect((await get('olive', '/accounts')).status).toBe(403);
  });

  it('a token’s secret is shown once, works, and is refused once revoked', async () => {
    const made = await post('olive', '/me/tokens', { label: 'night figures', submissionId: 't1' });
    const secret = /bjb_[\w-]+/.exec(made.text)?.[0] ?? '';
    expect(secret).not.toBe('');
    const { default: request } = await import('supertest');
    const ask = () => request(play.app.server).get('/api/v1/me').set('authorization', `Bearer ${secret}`);
    expect((await ask()).body.name).toBe('Olive Fenn');
    const page = (await get('olive', '/me')).text;
    expect(page).not.toContain(secret);
    const row = /<tr[^>]*>(?:(?!<\/tr>)[\s\S])*?night figures[\s\S]*?<\/tr>/.exec(page)?.[0] ?? '';
    const action = /action="([^"]+\/revocation)"/.exec(row)?.[1] ?? '';
    expect((await post('olive', action, {})).status).toBe(303);
    expect((await ask()).status).toBe(401);
  });

  it('a wrong password is said beside its field, and a short new one too', async () => {
    const wrong = await post('olive', '/me/password', { current: 'not this', next: 'long enough for a phrase' });
    expect(wrong.status).toBe(422);
    expect(wrong.text).toContain('id="f-current-fault"');
    const short = await post('olive', '/me/password', { current: 'x', next: 'short' });
    expect(short.text).toContain('id="f-next-fault"');
  });

  it('a member is named by address and role; an unknown address is answered with what to do', async () => {
    expect((await post('olive', job('/members'), { email: 'stan@plover-quay.example', role: 'reader' })).status).toBe(
      303,
    );
    expect((await get('stan', job('/floors'))).status).toBe(200);
    const unknown = await post('olive', job('/members'), { email: 'who@plover-quay.example', role: 'reader' });
    expect(unknown.status).toBe(422);
    expect(readPage(unknown.text)).toContain('An administrator makes the account first');
    const page = (await get('olive', job('/members'))).text;
    const row = /<tr[^>]*>(?:(?!<\/tr>)[\s\S])*?Stan Heath[\s\S]*?<\/tr>/.exec(page)?.[0] ?? '';
    const action = /action="([^"]+\/removal)"/.exec(row)?.[1] ?? '';
    expect((await post('olive', action, { version: fieldsOf(row).version ?? '' })).status).toBe(303);
    expect((await get('stan', job('/floors'))).status).toBe(404);
  });

  it('addresses are shown to those alone who may change the members', async () => {
    expect((await get('olive', job('/members'))).text).toContain('frank@plover-quay.example');
    const shown = (await get('frank', job('/members'))).text;
    expect(shown).not.toContain('@plover-quay.example');
    expect(shown).not.toContain('<form class="form" method="post" action="/jobs');
  });

  it('the heading of a job is changed on its reading, and a stale one is refused', async () => {
    const page = (await get('olive', job('/settings'))).text;
    const fields = fieldsOf(page.slice(page.indexOf('id="heading"')));
    const saved = await post('olive', job('/settings'), { ...fields, site: 'North quay' });
    expect(saved.status).toBe(303);
    const stale = await post('olive', job('/settings'), { ...fields, site: 'South quay' });
    expect(stale.status).toBe(412);
    expect(readPage(stale.text)).toContain('Site South quay North quay');
    expect(fieldsOf(stale.text.slice(stale.text.indexOf('id="heading"'))).site).toBe('South quay');
    expect((await post('frank', job('/settings'), fields)).status).toBe(403);
    expect((await get('frank', job('/settings'))).text).not.toContain(`action="/jobs/${jobId}/settings"`);
  });

  it('a level is made, changed and removed from its form, and one that runs hang on is kept', async () => {
    const faulty = await post('olive', job('/settings/levels/new'), {
      id: 'R',
      name: 'Roof',
      order: 'top',
      elevationMm: '5 miles',
    });
    expect(faulty.status).toBe(422);
    expect(faulty.text).toContain('id="f-order-fault"');
    expect(faulty.text).toContain('id="f-elevationMm-fault"');
    const fields = { id: 'R', name: 'Roof', order: '9', elevationMm: '70 ft', submissionId: 'roof' };
    const made = await post('olive', job('/settings/levels/new'), fields);
    const again = await post('olive', job('/settings/levels/new'), fields);
    expect([made.status, again.status]).toEqual([303, 303]);
    const taken = await post('olive', job('/settings/levels/new'), { ...fields, submissionId: 'roof-2' });
    expect(taken.status).toBe(422);
    const page = (await get('olive', job('/settings'))).text;
    const href = (key: string) => new RegExp(`href="([^"]+/settings/levels/[^"]+)">${key}<`).exec(page)?.[1] ?? '';
    const form = fieldsOf((await get('olive', href('R'))).text);
    expect(form).toMatchObject({ id: 'R', elevationMm: `70'-0"`, order: '9' });
    expect((await post('olive', href('R'), { ...form, name: 'Roof plant' })).status).toBe(303);
    const stale = await post('olive', href('R'), { ...form, name: 'Roof garden' });
    expect(stale.status).toBe(412);
    expect(readPage(stale.text)).toContain('What the level is called Roof garden Roof plant');
    const version = fieldsOf((await get('olive', href('R'))).text).version ?? '';
    expect((await post('olive', `${href('R')}/removal`, { version })).status).toBe(303);
    const used = fieldsOf((await get('olive', href('F1'))).text).version ?? '';
    const kept = await post('olive', `${href('F1')}/removal`, { version: used });
    expect(kept.status).toBe(409);
    expect(readPage(kept.text)).toContain('This level is used by run');
    expect((await get('frank', job('/settings/levels/new'))).status).toBe(403);
  });

  it('a busway type is typed in from its sheet, and saved untouched it changes nothing', async () => {
    const page = (await get('olive', job('/settings'))).text;
    const href = /href="([^"]+\/settings\/types\/[0-9a-f-]{36})"/.exec(page)?.[1] ?? '';
    const form = fieldsOf((await get('olive', href)).text);
    const api = `/api/v1/projects/${jobId}/busway-types/${href.split('/').at(-1)}`;
    const before = (await get('olive', api)).body;
    expect((await post('olive', href, form)).status).toBe(303);
    expect((await get('olive', api)).body).toEqual(before);
    const refused = await post('olive', job('/settings/types/new'), { ...form, id: 'my-400A', ratedCurrentA: '' });
    expect(refused.status).toBe(422);
    expect(refused.text).toContain('id="f-ratedCurrentA-fault"');
    const made = await post('olive', job('/settings/types/new'), {
      ...form,
      id: 'my-400A',
      ratedCurrentA: '400',
      submissionId: 'type-1',
    });
    expect(made.status).toBe(303);
    expect(readPage((await get('olive', job('/settings'))).text)).toContain(
      'my-400A 400 A, 600 V, 3 poles, full neutral',
    );
    expect((await get('frank', href)).status).toBe(403);
  });

  it('another document in the place of the design is shown as differences first, and written only then', async () => {
    const document = (await get('olive', job('/document.json'))).body;
    const next = structuredClone(document);
    next.runs[0].area = 'Battery room';
    const text = JSON.stringify(next);
    const shown = await post('olive', job('/settings/document'), { text, step: 'preview' });
    expect(shown.status).toBe(200);
    expect(readPage(shown.text)).toContain('run F1-R01-A changed area: Hall 1 → Battery room');
    expect((await get('olive', job('/document.json'))).body.runs[0].area).toBe('Hall 1');
    const form = shown.text.slice(shown.text.indexOf('aria-label="What would change"'));
    const put = await post('olive', job('/settings/document'), { ...fieldsOf(form), step: 'replace' });
    expect(put.status).toBe(303);
    expect((await get('olive', job('/document.json'))).body.runs[0].area).toBe('Battery room');
  });

  it('the copy of the job document that leaves the office holds no money', async () => {
    expect((await get('olive', job('/document.json'))).body.bid).toBeDefined();
    const copy = await get('rita', job('/document.json'));
    expect(copy.body.bid).toBeUndefined();
    expect(copy.text).not.toMatch(/"(prices|crew|price|ratePerHour)"/);
  });

  it('the audit trail says whether its chain holds, and shows prices to the office alone', async () => {
    const said = readPage((await get('olive', job('/audit'))).text);
    expect(said).toContain('The chain holds');
    expect(said).toContain('job document replaced');
    const fenced = readPage((await get('quinn', job('/audit'))).text);
    expect(fenced).toContain('prices or rates: shown to the office');
    expect((await get('frank', job('/audit'))).status).toBe(403);
  });

  it('an entry that was altered in the database is named where the chain fails', async () => {
    const { db } = play.context.database;
    const entry = await db.auditEntry.findFirstOrThrow({ where: { chain: jobId, seq: 2 } });
    await db.auditEntry.update({ where: { id: entry.id }, data: { userName: 'Nobody' } });
    expect(readPage((await get('olive', job('/audit'))).text)).toContain('The chain fails at entry 2');
    await db.auditEntry.update({ where: { id: entry.id }, data: { userName: entry.userName } });
    expect(readPage((await get('olive', job('/audit'))).text)).toContain('The chain holds');
  });

  it('a job is put away and brought back, and stays readable', async () => {
    const version = async () => {
      const page = (await get('olive', job('/settings'))).text;
      return fieldsOf(page.slice(page.indexOf('id="archived"'))).version ?? '';
    };
    expect((await post('olive', job('/settings/archived'), { archived: 'yes', version: await version() })).status).toBe(
      303,
    );
    expect(readPage((await get('olive', '/jobs')).text)).not.toContain('DEMO-1');
    expect(readPage((await get('olive', '/jobs?archived=yes')).text)).toContain('DEMO-1');
    expect((await get('frank', job('/floors'))).status).toBe(200);
    expect((await post('olive', job('/settings/archived'), { archived: 'no', version: await version() })).status).toBe(
      303,
    );
    expect(readPage((await get('olive', '/jobs')).text)).toContain('DEMO-1');
  });

  it('the API’s own page lists every path that the API answers', async () => {
    const { default: request } = await import('supertest');
    const page = await request(play.app.server).get('/docs');
    expect(page.status).toBe(200);
    const { body } = await request(play.app.server).get('/api/v1/openapi.json');
    const paths = Object.keys(body.paths);
    expect(paths.length).toBeGreaterThan(20);
    for (const path of paths) expect(page.text).toContain(`</strong> ${path}<`);
    expect(readPage(page.text)).toContain(
      'idempotency-key header text. The same key with the same request gives the first answer again',
    );
    expect(page.text).not.toMatch(/<script(?![^>]*\ssrc="\/vendor)/);
  });
});
