import { randomBytes } from 'node:crypto';
import { z } from 'zod';
import { type Caller, caller } from './caller.ts';

/** Who works on the demo job; all invented. The administrator makes the accounts, each sets a password and makes a token. */
const CREW = {
  olive: { name: 'Olive Fenn', role: 'office' },
  frank: { name: 'Frank Dune', role: 'foreman' },
  ines: { name: 'Ines Holt', role: 'installer' },
  ivan: { name: 'Ivan Brook', role: 'installer' },
  quinn: { name: 'Quinn Vale', role: 'inspector' },
} as const;
type Key = keyof typeof CREW;

export interface People {
  readonly ada: Caller;
  readonly crew: Readonly<Record<Key, Caller>>;
  /** Gives everybody of the crew a role in a job. */
  readonly joinAll: (projectId: string) => Promise<void>;
}

/** Makes the first account by its one-time link, as a person would in a browser, then everybody else's. */
export async function makePeople(base: string, firstSecret: string): Promise<People> {
  const ada = await makeFirst(base, firstSecret);
  const join = (key: Key): Promise<Caller> => invited(base, ada, CREW[key].name);
  const crew = {
    olive: await join('olive'),
    frank: await join('frank'),
    ines: await join('ines'),
    ivan: await join('ivan'),
    quinn: await join('quinn'),
  };
  return {
    ada,
    crew,
    joinAll: async (projectId) => {
      for (const { name, role } of Object.values(CREW)) {
        await ada.send('PUT', `/projects/${projectId}/members`, { email: addressOf(name), role }, 200);
      }
    },
  };
}

async function makeFirst(base: string, secret: string): Promise<Caller> {
  const browser = browse(base);
  const who = { name: 'Ada Marsh', email: addressOf('Ada Marsh'), password: newPassword() };
  await browser.submit(`/first-account/${secret}`, who);
  return caller(base, who.name, await browser.makeToken());
}

const invitedSchema = z.object({ link: z.string() });

async function invited(base: string, ada: Caller, name: string): Promise<Caller> {
  const email = addressOf(name);
  const { link } = invitedSchema.parse((await ada.send('POST', '/users', { name, email }, 201)).body);
  const browser = browse(base);
  const password = newPassword();
  await browser.submit(link, { password });
  await browser.submit('/sign-in', { email, password });
  return caller(base, name, await browser.makeToken());
}

function addressOf(name: string): string {
  return `${name.toLowerCase().replace(' ', '.')}@plover-quay.example`;
}

function newPassword(): string {
  return randomBytes(18).toString('base64url');
}

/** Just as much of a browser as the sign-in forms need: it keeps the session's cookie and sends the form's token back. */
function browse(base: string) {
  let cookie = '';
  const ask = async (path: string, init: RequestInit & { headers?: Record<string, string> } = {}) => {
    const headers = { ...init.headers, ...(cookie === '' ? {} : { cookie }) };
    const response = await fetch(base + path, { ...init, headers, redirect: 'manual' });
    const [given] = response.headers.getSetCookie();
    cookie = given?.split(';')[0] ?? cookie;
    return response;
  };
  const formToken = async (path: string): Promise<string> => {
    const page = await (await ask(path)).text();
    const found = /name="_csrf"[^>]*value="([^"]+)"/.exec(page) ?? /value="([^"]+)"[^>]*name="_csrf"/.exec(page);
    if (found?.[1] === undefined) throw new Error(`The page ${path} has no form.`);
    return found[1];
  };
  return {
    submit: async (path: string, fields: Readonly<Record<string, string>>): Promise<void> => {
      const body = new URLSearchParams({ ...fields, _csrf: await formToken(path) });
      const answer = await ask(path, { method: 'POST', body });
      if (answer.status !== 303) throw new Error(`The form ${path} was answered ${answer.status}.`);
    },
    makeToken: async (): Promise<string> => {
      const headers = { 'content-type': 'application/json', 'x-csrf-token': await formToken('/me') };
      const body = JSON.stringify({ label: 'demo' });
      const answer = await ask('/api/v1/tokens', { method: 'POST', headers, body });
      if (answer.status !== 201) throw new Error(`A token was answered ${answer.status}: ${await answer.text()}`);
      return z.object({ secret: z.string() }).parse(await answer.json()).secret;
    },
  };
}
