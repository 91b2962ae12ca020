// A released demo job on a real server with people who sign in, and quick hands that build what a journey starts from.
import { randomUUID } from 'node:crypto';
import { hash } from '@node-rs/argon2';
import type { Page } from 'playwright-core';
import type { Context, Viewer } from '../../src/actions/context.ts';
import { importDocument } from '../../src/actions/job-documents.ts';
import { takeRecord } from '../../src/actions/records.ts';
import { release } from '../../src/actions/releases.ts';
import { buildApp } from '../../src/app.ts';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import type { RecordInput } from '../../src/document/record-schema.ts';
import { recordSchema } from '../../src/document/record-schema.ts';
import type { Role } from '../../src/domain/access.ts';
import { jointSheet } from '../../src/domain/quality/joint-sheet.ts';
import type { Database } from '../../src/store/database.ts';
import { readFloorRun } from '../../src/store/floor-run.ts';

const PASSWORD = 'an invented pass phrase';

const PEOPLE = {
  olive: { name: 'Olive Fenn', role: 'office' },
  frank: { name: 'Frank Dune', role: 'foreman' },
  ines: { name: 'Ines Holt', role: 'installer' },
  quinn: { name: 'Quinn Vale', role: 'inspector' },
  rita: { name: 'Rita Moor', role: 'reader' },
} as const satisfies Record<string, { name: string; role: Role }>;
export type SitePerson = keyof typeof PEOPLE;

export interface Site {
  readonly address: string;
  readonly context: Context;
  readonly jobId: string;
  readonly viewer: (person: SitePerson) => Viewer;
  readonly signIn: (page: Page, person: SitePerson, next?: string) => Promise<void>;
  readonly record: (person: SitePerson, record: Pick<RecordInput, 'subject' | 'subjectId' | 'body'>) => Promise<void>;
  /** A released run with everything on it, as it stands now. */
  readonly run: (key: string) => Promise<NonNullable<Awaited<ReturnType<typeof readFloorRun>>> & { levelId: string }>;
  readonly close: () => Promise<void>;
}

export interface SiteOptions {
  readonly port?: number;
  /** Runs that the office keeps back. */
  readonly unreleased?: readonly string[];
  readonly clock?: () => Date;
}

export async function openSite(database: Database, options: SiteOptions = {}): Promise<Site> {
  const clock = options.clock ?? (() => new Date());
  const context: Context = { database, clock, newId: randomUUID };
  const app = await buildApp({
    config: { logLevel: 'silent', tls: null, trustProxy: false, publicUrl: null },
    context,
    sessionSecret: 'a secret for tests alone, long enough',
  });
  const viewers = await makePeople(context);
  const admin: Viewer = {
    userId: viewers.olive.userId,
    name: 'Olive Fenn',
    email: 'olive@plover-quay.example',
    administrator: true,
  };
  const project = await importDocument(context, admin, demoJob(), null);
  for (const person of keys(PEOPLE)) {
    const id = { projectId: project.id, userId: viewers[person].userId };
    const { role } = PEOPLE[person];
    await database.db.membership.upsert({ where: { projectId_userId: id }, create: { ...id, role }, update: { role } });
  }
  const runs = demoJob()
    .runs.map((run) => run.id)
    .filter((id) => !options.unreleased?.includes(id));
  await release(context, admin, project.id, { runs, reason: '' }, null);
  const address = await app.listen({ host: '127.0.0.1', port: options.port ?? 0 });
  return {
    address,
    context,
    jobId: project.id,
    viewer: (person) => viewers[person],
    signIn: async (page, person, next = '/jobs') => {
      await page.goto(`${address}/sign-in?next=${encodeURIComponent(next)}`);
      await page.locator('input[name=email]').fill(viewers[person].email);
      await page.locator('input[name=password]').fill(PASSWORD);
      await page.getByRole('button', { name: 'Sign in' }).click();
      await page.waitForURL((url) => !url.pathname.startsWith('/sign-in'));
    },
    record: async (person, record) => {
      const submission = recordSchema.parse({ ...record, submissionId: randomUUID(), at: clock().toISOString() });
      await takeRecord(context, viewers[person], project.id, submission);
    },
    run: async (key) => {
      const row = await database.db.run.findFirstOrThrow({ where: { projectId: project.id, key } });
      const floor = await readFloorRun(database.db, project.id, row.id);
      if (floor === null) throw new Error(`${key} was never released`);
      return { ...floor, levelId: row.levelId };
    },
    close: async () => {
      app.server.closeAllConnections();
      await app.close();
    },
  };
}

async function makePeople(context: Context): Promise<Record<SitePerson, Viewer>> {
  const passwordHash = await hash(PASSWORD);
  const made: [SitePerson, Viewer][] = [];
  for (const person of keys(PEOPLE)) {
    const email = `${person}@plover-quay.example`;
    const { name } = PEOPLE[person];
    const user = await context.database.db.user.create({
      data: { id: randomUUID(), name, email, administrator: false, passwordHash, createdAt: context.clock() },
    });
    made.push([person, { userId: user.id, name, email, administrator: false }]);
  }
  return Object.fromEntries(made) as Record<SitePerson, Viewer>;
}

function keys<K extends string>(record: Readonly<Record<K, unknown>>): K[] {
  return Object.keys(record) as K[];
}

/** Sets the first hangers of a run. */
export async function setHangers(site: Site, key: string, count = Number.POSITIVE_INFINITY): Promise<void> {
  const run = await site.run(key);
  for (const { id } of run.supports.slice(0, count))
    await site.record('ines', {
      subject: 'support',
      subjectId: id,
      body: { kind: 'support-set', rodPlumb: true, loadNut: true, lockNut: true },
    });
}

/** Hangs the first pieces of a run, the right way round. */
export async function hangPieces(site: Site, key: string, count = Number.POSITIVE_INFINITY): Promise<void> {
  const run = await site.run(key);
  for (const { id } of run.pieces.slice(0, count))
    await site.record('ines', {
      subject: 'piece',
      subjectId: id,
      body: { kind: 'piece-hung', conductorSide: run.run.conductorSide, endsConfirmedBy: 'Ivan Brook' },
    });
}

/** Does the first steps of the first joints of a run; all of them and the acceptance by default. */
export async function makeJoints(
  site: Site,
  key: string,
  { count = Number.POSITIVE_INFINITY, steps = Number.POSITIVE_INFINITY, accept = true } = {},
): Promise<void> {
  const run = await site.run(key);
  const sheet = jointSheet(run.type);
  for (const { id } of run.joints.slice(0, count)) {
    for (const { index, text, kind } of (sheet.steps ?? []).slice(0, steps)) {
      await site.record(kind === 'check' ? 'frank' : 'ines', {
        subject: 'joint',
        subjectId: id,
        body: {
          kind: 'joint-step',
          step: index,
          text,
          poles: kind === 'hold' ? sheet.poles.map((pole) => ({ pole, near: true, far: true })) : null,
          torque:
            kind === 'torque'
              ? { value: 24, unit: 'Nm', toolId: 'T-07', calibrationDue: inAYear(site.context.clock()) }
              : null,
        },
      });
    }
    if (accept && steps === Number.POSITIVE_INFINITY)
      await site.record('frank', { subject: 'joint', subjectId: id, body: { kind: 'joint-accepted' } });
  }
}

export function inAYear(now: Date): string {
  return new Date(now.getTime() + 365 * 24 * 3_600_000).toISOString().slice(0, 10);
}

/** Closes the ends and the slot of a run. */
export async function closeEnds(site: Site, key: string): Promise<void> {
  const { id } = await site.run(key);
  const run = { subject: 'run' as const, subjectId: id };
  await site.record('ines', { ...run, body: { kind: 'end-closed', end: 'far', capFitted: true, screwSet: true } });
  await site.record('ines', { ...run, body: { kind: 'slot-closed' } });
}

/** Sets the first tap-offs of a run, supports their drops, and has Frank check them where asked. */
export async function setTapOffs(site: Site, key: string, count: number, check = true): Promise<void> {
  const run = await site.run(key);
  for (const { id, tap } of run.taps
    .map((row) => ({ id: row.id, tap: row.spec as { phases: never } }))
    .slice(0, count)) {
    const subject = { subject: 'tap' as const, subjectId: id };
    await site.record('ines', {
      ...subject,
      body: {
        kind: 'tap-set',
        isolation: {
          runIsolated: true,
          absenceOfVoltageProved: true,
          provedBy: 'Ines Holt',
          provedAt: site.context.clock().toISOString(),
        },
        device: { off: true, locked: true },
        steps: ['Retaining piece in place', 'Head in the slot', 'Box seated flush before it is engaged', 'Box secured'],
        phasesFound: tap.phases,
      },
    });
    await site.record('ines', { ...subject, body: { kind: 'drop-supported', distanceMm: 1200 } });
    if (check) await site.record('frank', { ...subject, body: { kind: 'tap-checked' } });
  }
}
