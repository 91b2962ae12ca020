import { randomUUID } from 'node:crypto';
import { Prisma } from '../../gen/sqlite/client.ts';
import { audit, firstBreak } from '../../src/actions/audit.ts';
import type { Context } from '../../src/actions/context.ts';
import { type Database, openDatabase } from '../../src/store/database.ts';
import { type ChainEntry, chainBreak } from '../../tests/proof/reference/audit-chain.ts';
import type { DatabaseKind } from './databases.ts';
import { type Dice, dice } from './dice.ts';
import type { Outcome, Proof, Trial } from './proof.ts';

export const auditChain: Proof = {
  name: 'audit-chain',
  says: 'entries written at once by two servers stand in one unbroken chain; any one field changed or entry gone shows where',
  fullCount: 2_000,
  shortCount: 80,
  run: async (trial) => joined([await proveChain(trial, 'sqlite'), await proveChain(trial, 'postgres')]),
};

const WRITERS = 8;
const CHAIN = 'proof';

/** On one kind of database: a quarter of the count is entries, a quarter attempts to change one of them unseen. */
export async function proveChain({ count, seed, databases }: Trial, kind: DatabaseKind): Promise<Outcome> {
  const url = await databases.migratedUrl(kind);
  const servers = [await openDatabase(url), await openDatabase(url)];
  try {
    const entries = Math.ceil(count / 4);
    const written = await writeAtOnce(servers, entries, seed);
    const changed = await changeEach(servers[0]!, Math.ceil(count / 4), seed);
    return {
      compared: entries + changed.tried,
      failures: [...written, ...changed.failures].map((failure) => `${kind}: ${failure}`),
      note: `${kind}: ${entries} entries by ${WRITERS} writers on ${servers.length} servers, ${changed.tried} changes, ${changed.tried - changed.failures.length} seen where they are`,
    };
  } finally {
    for (const server of servers) await server.close();
  }
}

export function joined(outcomes: readonly Outcome[]): Outcome {
  return {
    compared: outcomes.reduce((sum, { compared }) => sum + compared, 0),
    failures: outcomes.flatMap(({ failures }) => failures),
    note: outcomes.map(({ note }) => note).join('; '),
  };
}

async function writeAtOnce(servers: readonly Database[], entries: number, seed: number): Promise<string[]> {
  let next = 0;
  const writer = async (w: number): Promise<void> => {
    const database = servers[w % servers.length]!;
    const context: Context = { database, clock: () => new Date(), newId: randomUUID };
    while (next < entries) {
      const chance = dice(seed, next);
      const [person, deed] = [personOf(chance), deedOf(chance, next)];
      next += 1;
      await database.write((tx) => audit(tx, context, person, deed));
    }
  };
  await Promise.all(Array.from({ length: WRITERS }, (_, w) => writer(w)));
  const stored = await readChain(servers[0]!);
  const failures: string[] = [];
  if (stored.length !== entries) failures.push(`${stored.length} of ${entries} entries are in the chain`);
  const subjects = new Set(stored.map((entry) => entry.subjectId));
  if (subjects.size !== entries) failures.push(`${entries - subjects.size} deeds are not in the chain`);
  const broken = [chainBreak(stored), await firstBreak(servers[0]!.db, CHAIN)];
  if (broken.some((at) => at !== null)) failures.push(`the chain as written breaks at ${broken}`);
  return failures;
}

function personOf(chance: Dice) {
  if (chance.chance(10)) return null;
  const name = chance.pick(['Ada Marsh', 'Olive Fenn', 'Büro – 母線', "O'Dune"]);
  return { userId: `u-${name}`, name, email: 'somebody@plover-quay.example', administrator: false };
}

function deedOf(chance: Dice, number: number) {
  const detail = () =>
    chance.pick([undefined, null, 'text', 12.5, { z: [1, { b: null, a: '"' }], a: { ü: true } }, []]);
  return {
    chain: CHAIN,
    action: chance.pick(['run changed', 'level changed', 'runs released']),
    subject: 'run',
    subjectId: `s-${number}`,
    before: detail(),
    after: detail(),
    money: chance.chance(30),
  };
}

async function readChain({ db }: Database): Promise<(ChainEntry & { readonly id: string })[]> {
  return db.auditEntry.findMany({ where: { chain: CHAIN }, orderBy: { seq: 'asc' } });
}

type Field = keyof ChainEntry;
/** Every field that an entry has, its place in the chain included; its own id is not part of what is recorded. */
const FIELDS: readonly Field[] = [
  'chain',
  'seq',
  'at',
  'userId',
  'userName',
  'action',
  'subject',
  'subjectId',
  'money',
  'before',
  'after',
  'previousHash',
  'hash',
];

/** Changes one field of one entry, or takes the entry out of the chain, looks for the break, and puts all back. */
async function changeEach(database: Database, attempts: number, seed: number) {
  const { db } = database;
  const entries = await readChain(database);
  const failures: string[] = [];
  for (let i = 0; i < attempts; i += 1) {
    const field = FIELDS[i % FIELDS.length]!;
    // That the last entry alone is gone cannot show in what is left, so it is never the one that is taken out.
    const entry = entries[dice(seed ^ 0x5eed, i).int(0, entries.length - (field === 'chain' ? 2 : 1))]!;
    await db.auditEntry.update({ where: { id: entry.id }, data: { [field]: otherThan(entry, field) } });
    const found = [await firstBreak(db, CHAIN), chainBreak(await readChain(database))];
    if (found.some((at) => at !== entry.seq)) {
      failures.push(`${field} of entry ${entry.seq} was changed, and the break is found at ${found}`);
    }
    await db.auditEntry.update({ where: { id: entry.id }, data: { [field]: restored(entry, field) } });
  }
  const end = await firstBreak(db, CHAIN);
  if (end !== null) failures.push(`the chain put back as it was breaks at ${end}`);
  return { tried: attempts, failures };
}

function otherThan(entry: ChainEntry, field: Field): unknown {
  switch (field) {
    case 'chain':
      return 'elsewhere';
    case 'seq':
      return entry.seq + 1_000_000;
    case 'at':
      return new Date(entry.at.getTime() + 1);
    case 'userId':
      return entry.userId === null ? 'u-somebody' : null;
    case 'money':
      return !entry.money;
    case 'before':
    case 'after':
      return { was: entry[field] };
    case 'previousHash':
    case 'hash':
      return entry[field].replace(/^./, (first) => (first === '0' ? '1' : '0'));
    default:
      return `${entry[field]} `;
  }
}

/** A JSON column without a value needs Prisma's own sign for it. */
function restored(entry: ChainEntry, field: Field): unknown {
  return (field === 'before' || field === 'after') && entry[field] === null ? Prisma.DbNull : entry[field];
}
