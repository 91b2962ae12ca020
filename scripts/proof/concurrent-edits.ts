import { setTimeout as sleep } from 'node:timers/promises';
import { z } from 'zod';
import type { JobDocument } from '../../src/document/job-document.ts';
import { runSchema } from '../../src/document/job-document.ts';
import { joined } from './audit-chain.ts';
import type { DatabaseKind } from './databases.ts';
import { dice } from './dice.ts';
import type { Outcome, Proof, Trial } from './proof.ts';
import { administratorToken, ask, openService, type Service } from './service.ts';
import { smallJob, smallRun, smallTap, smallType } from './small-jobs.ts';

export const concurrentEdits: Proof = {
  name: 'concurrent-edits',
  says: 'changes sent at once to two servers: every 200 is in the record, no 412 is; a create sent thrice is made once',
  fullCount: 2_000,
  shortCount: 80,
  run: async (trial) => joined([await proveEdits(trial, 'sqlite'), await proveEdits(trial, 'postgres')]),
};

const WORKERS = 6;
const RUNS = ['R1', 'R2', 'R3'];

interface Sent {
  readonly run: string;
  readonly mark: string;
  readonly basis: number;
  readonly status: number;
  readonly version: number | null;
}

/**
 * On one kind of database: half of the count, each change adding one tap-off with a mark of its own to a run as it was read;
 * then a burst of creates, each sent three times under its one key.
 */
export async function proveEdits({ count, seed, databases }: Trial, kind: DatabaseKind): Promise<Outcome> {
  const url = await databases.migratedUrl(kind);
  const services = [await openService(url), await openService(url)];
  try {
    const stage = await makeJob(services);
    const sent = await sendAll(stage, Math.ceil(count / 2), seed);
    const burst = await createAtOnce(stage, Math.ceil(count / 40));
    const failures = [
      ...judgeAnswers(sent),
      ...(await judgeRecord(stage, sent)),
      ...(await judgeTrail(stage, sent)),
      ...burst.failures,
    ];
    const of = (status: number) => sent.filter((one) => one.status === status).length;
    return {
      compared: sent.length,
      failures: failures.map((failure) => `${kind}: ${failure}`),
      note: `${kind}: ${of(200)} taken, ${of(412)} refused as stale; ${burst.sent} creates all at once made ${burst.made}`,
    };
  } finally {
    for (const service of services) await service.close();
  }
}

interface Stage {
  readonly services: readonly Service[];
  readonly token: string;
  readonly project: string;
  /** Run ids of the API by their label. */
  readonly runs: ReadonlyMap<string, string>;
}

const madeSchema = z.object({ id: z.string() });
const rowsSchema = z.object({ items: z.array(z.object({ id: z.string(), key: z.string() })) });

async function makeJob(services: readonly Service[]): Promise<Stage> {
  const [first] = services;
  const token = await administratorToken(first!);
  const made = await ask(first!.url, token, 'POST', '/job-documents', plainJob());
  const project = `/projects/${madeSchema.parse(made.body).id}`;
  const rows = rowsSchema.parse((await ask(first!.url, token, 'GET', `${project}/runs`)).body);
  return { services, token, project, runs: new Map(rows.items.map(({ id, key }) => [key, id])) };
}

function plainJob(): JobDocument {
  const type = smallType({ stockLengthsMm: [3000], support: { maxSpacingMm: 3000, maxEndOverhangMm: 600 } });
  return smallJob(
    type,
    RUNS.map((id) => smallRun({ id, legs: [{ lengthMm: 30_000, turn: 'none' }] })),
  );
}

async function sendAll(stage: Stage, count: number, seed: number): Promise<Sent[]> {
  const sent: Sent[] = [];
  let next = 0;
  const worker = async (): Promise<void> => {
    while (next < count) {
      const number = next;
      next += 1;
      sent.push(await sendOne(stage, number, seed));
    }
  };
  await Promise.all(Array.from({ length: WORKERS }, worker));
  return sent;
}

const runViewSchema = z.object({ version: z.number(), document: runSchema });

/** Reads a run, waits or not, and sends it back with one tap-off more. */
async function sendOne(stage: Stage, number: number, seed: number): Promise<Sent> {
  const chance = dice(seed, number);
  const run = chance.pick(RUNS);
  const path = `${stage.project}/runs/${stage.runs.get(run)}`;
  const mark = `E${number}`;
  const read = await ask(chance.pick(stage.services).url, stage.token, 'GET', path);
  const { document, version } = runViewSchema.parse(read.body);
  if (chance.chance(50)) await sleep(chance.int(0, 15));
  const taps = [...(document.taps ?? []), smallTap(mark, chance.int(0, 30_000))];
  const headers = { 'if-match': read.etag };
  const answer = await ask(chance.pick(stage.services).url, stage.token, 'PUT', path, { ...document, taps }, headers);
  const written = answer.status === 200 ? runViewSchema.parse(answer.body).version : null;
  return { run, mark, basis: version, status: answer.status, version: written };
}

/** Only 200 and 412; each 200 stands one version above what its writer had read, and no two above the same. */
function judgeAnswers(sent: readonly Sent[]): string[] {
  const failures: string[] = [];
  const bases = new Set<string>();
  for (const { run, mark, basis, status, version } of sent) {
    if (status !== 200 && status !== 412) failures.push(`${mark} on ${run} was answered ${status}`);
    if (status !== 200) continue;
    if (version !== basis + 1) failures.push(`${mark} on ${run} read version ${basis} and wrote version ${version}`);
    if (bases.has(`${run} ${basis}`)) failures.push(`two changes of version ${basis} of ${run} were both taken`);
    bases.add(`${run} ${basis}`);
  }
  if (bases.size < 3) failures.push('hardly a change was taken: the proof proves nothing');
  return failures;
}

/** The record holds the marks of all changes that were taken, in the order of their versions, and no other. */
async function judgeRecord(stage: Stage, sent: readonly Sent[]): Promise<string[]> {
  const failures: string[] = [];
  for (const run of RUNS) {
    const read = await ask(stage.services[0]!.url, stage.token, 'GET', `${stage.project}/runs/${stage.runs.get(run)}`);
    const found = (runViewSchema.parse(read.body).document.taps ?? []).map(({ id }) => id);
    const taken = sent.filter((one) => one.run === run && one.status === 200);
    const expected = taken.sort((a, b) => a.basis - b.basis).map(({ mark }) => mark);
    if (found.join() !== expected.join()) failures.push(`${run} holds ${found}, and ${expected} were taken`);
  }
  return failures;
}

const trailSchema = z.object({
  total: z.number(),
  firstBreak: z.number().nullable(),
  items: z.array(z.object({ action: z.string(), after: z.unknown() })),
});
const afterSchema = z.object({ taps: z.array(z.object({ id: z.string() })) });

/** The audit trail names each change that was taken once, and none that was refused. */
async function judgeTrail(stage: Stage, sent: readonly Sent[]): Promise<string[]> {
  const marks: string[] = [];
  const breaks = new Set<number | null>();
  for (let page = 1, total = 1; (page - 1) * 500 < total; page += 1) {
    const path = `${stage.project}/audit?limit=500&page=${page}`;
    const trail = trailSchema.parse((await ask(stage.services[1]!.url, stage.token, 'GET', path)).body);
    total = trail.total;
    breaks.add(trail.firstBreak);
    for (const { action, after } of trail.items) {
      if (action === 'run changed') marks.push(afterSchema.parse(after).taps.at(-1)!.id);
    }
  }
  const taken = sent.filter(({ status }) => status === 200).map(({ mark }) => mark);
  const failures: string[] = [];
  if (marks.sort().join() !== taken.sort().join()) failures.push(`the trail names ${marks}, and ${taken} were taken`);
  if ([...breaks].some((at) => at !== null)) failures.push(`the audit trail breaks at ${[...breaks]}`);
  return failures;
}

const levelsSchema = z.object({ items: z.array(z.object({ id: z.string(), document: z.object({ id: z.string() }) })) });

/** All at one moment, to both servers in turn. Each key makes one level, and all three answers are the same. */
async function createAtOnce(stage: Stage, levels: number) {
  const sendings = Array.from({ length: 3 * levels }, async (_, i) => {
    const id = `X${i % levels}`;
    const level = { id, name: id, order: 100 + (i % levels) };
    const key = { 'idempotency-key': `key-${id}` };
    const base = stage.services[i % stage.services.length]!.url;
    const { status, body } = await ask(base, stage.token, 'POST', `${stage.project}/levels`, level, key);
    return { id, answer: `${status} ${JSON.stringify(body)}` };
  });
  const sent = await Promise.all(sendings);
  const failures: string[] = [];
  for (const id of new Set(sent.map((one) => one.id))) {
    const answers = new Set(sent.filter((one) => one.id === id).map(({ answer }) => answer));
    const [only] = answers;
    if (answers.size !== 1 || !only?.startsWith('201 ')) failures.push(`level ${id} was answered ${[...answers]}`);
  }
  const read = await ask(stage.services[0]!.url, stage.token, 'GET', `${stage.project}/levels?limit=500`);
  const made = levelsSchema.parse(read.body).items.filter(({ document }) => document.id.startsWith('X')).length;
  if (made !== levels) failures.push(`${sent.length} creates under ${levels} keys made ${made} levels`);
  return { sent: sent.length, made, failures };
}
