// The one named cast of the tests, all invented, and the service they use. Every person has a token; `as(person)` is a
// supertest agent that sends it. The job's roles are set by `joinAll(projectId)`.
import { randomUUID } from 'node:crypto';
import request from 'supertest';
import type { Context } from '../../src/actions/context.ts';
import { makeToken } from '../../src/actions/tokens.ts';
import { buildApp } from '../../src/app.ts';
import type { Role } from '../../src/domain/access.ts';
import type { App } from '../../src/http/app-type.ts';
import type { Database } from '../../src/store/database.ts';

export const PEOPLE = {
  ada: { name: 'Ada Marsh', role: null, administrator: true },
  olive: { name: 'Olive Fenn', role: 'office', administrator: false },
  frank: { name: 'Frank Dune', role: 'foreman', administrator: false },
  ines: { name: 'Ines Holt', role: 'installer', administrator: false },
  ivan: { name: 'Ivan Brook', role: 'installer', administrator: false },
  quinn: { name: 'Quinn Vale', role: 'inspector', administrator: false },
  owen: { name: 'Owen Lea', role: 'owner', administrator: false },
  rita: { name: 'Rita Moor', role: 'reader', administrator: false },
  stan: { name: 'Stan Heath', role: null, administrator: false }, // a stranger to the job
} as const satisfies Record<string, { name: string; role: Role | null; administrator: boolean }>;
export type Person = keyof typeof PEOPLE;

export interface Stage {
  readonly app: App;
  readonly context: Context;
  /** Moves the clock; it stands still otherwise. */
  readonly setClock: (iso: string) => void;
  readonly as: (person: Person) => ReturnType<typeof request.agent>;
  readonly userId: (person: Person) => string;
  readonly tokenOf: (person: Person) => string;
  readonly joinAll: (projectId: string) => Promise<void>;
}

export const FIRST_MOMENT = '2026-05-12T13:00:00.000Z';

/** The service on this database with everybody's account and token; close the app at the end. */
export async function stage(database: Database): Promise<Stage> {
  let now = new Date(FIRST_MOMENT);
  const context: Context = { database, clock: () => now, newId: randomUUID };
  const app = await buildApp({
    config: { logLevel: 'silent', tls: null, trustProxy: false, publicUrl: null },
    context,
    sessionSecret: 'a secret for tests alone, long enough',
  });
  await app.ready();
  const tokens = new Map<Person, { userId: string; secret: string }>();
  for (const key of Object.keys(PEOPLE) as Person[]) {
    const { name, administrator } = PEOPLE[key];
    const email = `${key}@plover-quay.example`;
    const user = await database.db.user.create({
      data: { id: randomUUID(), name, email, administrator, passwordHash: '', createdAt: now },
    });
    const { secret } = await makeToken(context, { userId: user.id, name, email, administrator }, 'tests', null);
    tokens.set(key, { userId: user.id, secret: secret ?? '' });
  }
  const held = (person: Person) => tokens.get(person) ?? { userId: '', secret: '' };
  return {
    app,
    context,
    setClock: (iso) => {
      now = new Date(iso);
    },
    as: (person) => {
      const agent = request.agent(app.server);
      agent.set('authorization', `Bearer ${held(person).secret}`);
      return agent;
    },
    userId: (person) => held(person).userId,
    tokenOf: (person) => held(person).secret,
    joinAll: async (projectId) => {
      for (const key of Object.keys(PEOPLE) as Person[]) {
        const { role } = PEOPLE[key];
        if (role === null) continue;
        const id = { projectId, userId: held(key).userId };
        await database.db.membership.upsert({
          where: { projectId_userId: id },
          create: { ...id, role },
          update: { role },
        });
      }
    },
  };
}
