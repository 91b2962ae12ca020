import request from 'supertest';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { firstAccountSecret } from '../../src/actions/accounts.ts';
import { type Stage, stage } from '../support/cast.ts';
import { forEachDatabase } from '../support/databases.ts';

const csrfOf = (html: string) => /name="_csrf" value="([^"]+)"/.exec(html)?.[1] ?? '';

forEachDatabase((open) => {
  let play: Stage;
  beforeAll(async () => {
    const database = await open();
    play = await stage(database);
    await database.db.user.deleteMany({}); // this story begins before anybody has an account
  });
  afterAll(() => play.app.close());

  const browser = () => request.agent(play.app.server);
  const ada = { name: 'Ada Marsh', email: 'Ada@Plover-Quay.example', password: 'eleven herons wading' };
  const signIn = async (person: ReturnType<typeof browser>, email: string, password: string) => {
    const form = await person.get('/sign-in');
    return person
      .post('/sign-in')
      .type('form')
      .send({ _csrf: csrfOf(form.text), email, password });
  };

  it('the first link makes one administrator, once', async () => {
    const secret = (await firstAccountSecret(play.context)) ?? '';
    const person = browser();
    const form = await person.get(`/first-account/${secret}`);
    const short = await person
      .post(`/first-account/${secret}`)
      .type('form')
      .send({ _csrf: csrfOf(form.text), ...ada, password: 'short' });
    expect(short.status).toBe(422);
    expect(short.text).toContain('10 characters');
    expect(short.text).toContain('value="Ada Marsh"');
    const made = await person
      .post(`/first-account/${secret}`)
      .type('form')
      .send({ _csrf: csrfOf(short.text), ...ada });
    expect([made.status, made.headers.location?.split('?')[0]]).toEqual([303, '/jobs']);
    expect((await person.get('/api/v1/me')).body).toMatchObject({ name: 'Ada Marsh', administrator: true });

    const late = browser();
    const lateForm = await late.get(`/first-account/${secret}`);
    const again = await late
      .post(`/first-account/${secret}`)
      .type('form')
      .send({ _csrf: csrfOf(lateForm.text), ...ada, email: 'eve@plover-quay.example' });
    expect(again.status).toBe(410);
    expect(await firstAccountSecret(play.context)).toBeNull();
  });

  it('a post without the session’s token changes nothing', async () => {
    const person = browser();
    await signIn(person, ada.email, ada.password);
    const forged = await person.post('/api/v1/tokens').send({ label: 'forged' });
    expect([forged.status, forged.body.type]).toEqual([403, '/problems/forged']);
    expect((await person.get('/api/v1/tokens')).body.items).toEqual([]);
  });

  it('the session cookie is out of reach of scripts and of other sites, and changes at signing in', async () => {
    const person = browser();
    const form = await person.get('/sign-in');
    const planted = String(form.headers['set-cookie']);
    const answer = await person
      .post('/sign-in')
      .type('form')
      .send({ _csrf: csrfOf(form.text), email: ada.email, password: ada.password });
    const cookie = String(answer.headers['set-cookie']);
    expect(cookie).toMatch(/HttpOnly/i);
    expect(cookie).toMatch(/SameSite=Lax/i);
    expect(cookie.split(';')[0]).not.toBe(planted.split(';')[0]);
  });

  it('a page of the site sends a stranger to sign in and back to the page asked for, never to another site', async () => {
    const person = browser();
    const sent = await person.get('/jobs');
    expect([sent.status, sent.headers.location]).toEqual([303, '/sign-in?next=%2Fjobs']);
    const form = await person.get('/sign-in?next=//evil.example/');
    const answer = await person
      .post('/sign-in')
      .type('form')
      .send({ _csrf: csrfOf(form.text), email: ada.email, password: ada.password, next: '//evil.example/' });
    expect(answer.headers.location).toBe('/jobs');
  });

  it('a part of a page that refreshes itself after the session ran out leaves the page and what is typed in it alone', async () => {
    const answer = await browser().get('/jobs').set('hx-request', 'true');
    expect([answer.status, answer.headers['hx-reswap'], answer.text]).toEqual([401, 'none', '']);
  });

  it('an unknown address and a wrong password get the same answer, and after ten tries the account waits', async () => {
    const person = browser();
    const unknown = await signIn(person, 'nobody@plover-quay.example', 'a wrong password');
    const wrong = await signIn(person, ada.email, 'a wrong password');
    expect([unknown.status, wrong.status]).toEqual([401, 401]);
    const words = (html: string) => /role="alert"[\s\S]*?<\/div>/.exec(html)?.[0];
    expect(words(unknown.text)).toBe(words(wrong.text));
    const answers: number[] = [];
    for (let n = 0; n < 11; n += 1) answers.push((await signIn(person, 'frank@plover-quay.example', 'guess')).status);
    expect(answers.slice(0, 10)).toEqual(Array(10).fill(401));
    expect(answers[10]).toBe(429);
  });

  it('an administrator makes an account whose owner sets the password by a link; closing it ends its sessions', async () => {
    const office = browser();
    await signIn(office, ada.email, ada.password);
    const token = await office
      .get('/jobs')
      .then((page) => /name="csrf-token" content="([^"]+)"/.exec(page.text)?.[1] ?? '');
    const made = await office
      .post('/api/v1/users')
      .set('x-csrf-token', token)
      .send({ name: 'Frank Dune', email: 'frank@plover-quay.example' });
    expect(made.status, JSON.stringify(made.body)).toBe(201);
    const frank = browser();
    const form = await frank.get(made.body.link);
    await frank
      .post(made.body.link)
      .type('form')
      .send({ _csrf: csrfOf(form.text), password: 'four plovers resting' });
    expect((await frank.get('/api/v1/me')).body.name).toBe('Frank Dune');
    expect((await frank.get('/api/v1/users')).status).toBe(403);

    const user = (await office.get('/api/v1/users')).body.items.find(
      (one: { name: string }) => one.name === 'Frank Dune',
    );
    const closed = await office
      .patch(`/api/v1/users/${user.id}`)
      .set('x-csrf-token', token)
      .set('if-match', `"${user.version}"`)
      .send({ disabled: true });
    expect(closed.status, JSON.stringify(closed.body)).toBe(200);
    expect((await frank.get('/api/v1/me')).status).toBe(401);
  });

  it('the last administrator can be neither closed nor demoted', async () => {
    const office = browser();
    await signIn(office, ada.email, ada.password);
    const token = await office
      .get('/jobs')
      .then((page) => /name="csrf-token" content="([^"]+)"/.exec(page.text)?.[1] ?? '');
    const me = (await office.get('/api/v1/users')).body.items.find(
      (one: { administrator: boolean }) => one.administrator,
    );
    const refused = await office
      .patch(`/api/v1/users/${me.id}`)
      .set('x-csrf-token', token)
      .set('if-match', `"${me.version}"`)
      .send({ administrator: false });
    expect(refused.status).toBe(409);
  });

  it('a token works for scripts until it is revoked, and the record holds only its hash', async () => {
    const office = browser();
    await signIn(office, ada.email, ada.password);
    const csrf = await office
      .get('/jobs')
      .then((page) => /name="csrf-token" content="([^"]+)"/.exec(page.text)?.[1] ?? '');
    const made = await office.post('/api/v1/tokens').set('x-csrf-token', csrf).send({ label: 'nightly list' });
    const script = () => request(play.app.server).get('/api/v1/me').set('authorization', `Bearer ${made.body.secret}`);
    expect((await script()).status).toBe(200);
    const rows = await play.context.database.db.apiToken.findMany();
    expect(JSON.stringify(rows)).not.toContain(made.body.secret);
    const twice = () =>
      office
        .post('/api/v1/tokens')
        .set('x-csrf-token', csrf)
        .set('idempotency-key', 'one')
        .send({ label: 'weekly list' });
    const [told, again] = [await twice(), await twice()];
    expect(told.body.secret).toMatch(/^bjb_/);
    expect(again.body).toEqual({ token: told.body.token, secret: null });
    await office.delete(`/api/v1/tokens/${made.body.token.id}`).set('x-csrf-token', csrf);
    expect((await script()).status).toBe(401);
  });
});
