import { describe, expect, it } from 'vitest';
import { Prisma } from '../../gen/sqlite/client.ts';
import { isUniqueViolation, type Tx } from '../../src/store/database.ts';
import { insertMany, type NewRow, updateMany } from '../../src/store/insert-many.ts';
import { forEachDatabase } from '../support/databases.ts';

// The second opinion is Prisma's own createMany: the same rows written both ways must read back the same.
const at = new Date('2027-03-01T06:05:04.003Z');
const wholeSecond = new Date('2027-12-31T23:59:59.000Z');

forEachDatabase((open, kind) => {
  describe('rows written in bulk', () => {
    it('read back like rows that createMany wrote, for every kind of column', async () => {
      const { db, write } = await open();
      await write(async (tx) => {
        await seedRun(tx);
        await insertMany(tx, 'Support', supports('bulk'));
        await tx.support.createMany({ data: supports('one') });
        await insertMany(tx, 'Run', [run('r-bulk', 2)]);
        await tx.run.createMany({ data: [run('r-one', 3)] });
      });
      const read = (prefix: string) =>
        db.support.findMany({ where: { id: { startsWith: prefix } }, orderBy: { ordinal: 'asc' } });
      expect(strip(await read('bulk'))).toEqual(strip(await read('one')));
      const bulk = await db.run.findUniqueOrThrow({ where: { id: 'r-bulk' } });
      const one = await db.run.findUniqueOrThrow({ where: { id: 'r-one' } });
      expect({ ...bulk, id: '', key: '', ordinal: 0 }).toEqual({ ...one, id: '', key: '', ordinal: 0 });
      expect(bulk.releasedAt).toEqual(wholeSecond);
      expect(bulk.spec).toEqual(awkwardJson);
    });

    it('hold the same bytes as rows that createMany wrote', async () => {
      const { db, write } = await open();
      await write(async (tx) => {
        await seedRun(tx);
        await insertMany(tx, 'Run', [run('r-bulk', 2)]);
        await tx.run.createMany({ data: [run('r-one', 3)] });
      });
      const raw = await db.$queryRawUnsafe<{ stored: string }[]>(rawColumns[kind]);
      expect(raw).toHaveLength(2);
      expect(raw[0]).toEqual(raw[1]);
    });

    it('are updated to the same bytes that Prisma’s own update writes, and no other row is touched', async () => {
      const { db, write } = await open();
      await write(async (tx) => {
        await seedRun(tx);
        await insertMany(tx, 'Run', [run('r-bulk', 2), run('r-one', 3), run('r-other', 4)]);
        const other = await tx.run.findUniqueOrThrow({ where: { id: 'r-other' } });
        const next = { area: null, lengthU80: 4_711, layoutOk: false, releasedAt: at, version: 9 };
        const spec = { text: 'quotes " and \\', list: [1.5, null, 'é'] };
        await updateMany(tx, 'Run', [{ id: 'r-bulk', ...next, spec }]);
        await tx.run.update({ where: { id: 'r-one' }, data: { ...next, spec } });
        expect(await tx.run.findUniqueOrThrow({ where: { id: 'r-other' } })).toEqual(other);
      });
      const raw = await db.$queryRawUnsafe<{ stored: string }[]>(rawColumns[kind]);
      const [bulk, one] = await Promise.all(
        ['r-bulk', 'r-one'].map((id) => db.run.findUniqueOrThrow({ where: { id } })),
      );
      expect(bulk).toMatchObject({ lengthU80: 4_711, releasedAt: at, version: 9, area: null });
      expect({ ...bulk, id: '', key: '', ordinal: 0 }).toEqual({ ...one, id: '', key: '', ordinal: 0 });
      expect(raw[0]).toEqual(raw[1]);
    });

    it('are found by a search for a date, beside rows that createMany wrote', async () => {
      const { db, write } = await open();
      await write(async (tx) => {
        await seedRun(tx);
        await insertMany(tx, 'Run', [run('r-bulk', 2)]);
      });
      const where = { releasedAt: { gte: wholeSecond, lte: wholeSecond } };
      const found = await db.run.findMany({ where, orderBy: { id: 'asc' }, select: { id: true } });
      expect(found).toEqual([{ id: 'r' }, { id: 'r-bulk' }]);
    });

    it('take the default of a column that no row names', async () => {
      const { db, write } = await open();
      await write(async (tx) => {
        await seedRun(tx);
        await insertMany(tx, 'Joint', [{ id: 'j1', projectId: 'p', runId: 'r', ordinal: 0, mark: 'R-J01', atU80: 8 }]);
      });
      expect(await db.joint.findUnique({ where: { id: 'j1' } })).toMatchObject({
        state: 'open',
        stepsDone: 0,
        version: 1,
        stateAt: null,
      });
    });

    it('tell a stored JSON null from no value', async () => {
      const { db, write } = await open();
      const entry = {
        chain: 'c',
        at,
        userName: 'A',
        action: 'a',
        subject: 's',
        subjectId: 'i',
        money: false,
        previousHash: '',
        hash: '',
      };
      await write((tx) =>
        insertMany(tx, 'AuditEntry', [
          { ...entry, id: 'a1', seq: 1, before: Prisma.JsonNull },
          { ...entry, id: 'a2', seq: 2, before: Prisma.DbNull },
          { ...entry, id: 'a3', seq: 3 },
        ]),
      );
      expect(await db.auditEntry.count({ where: { before: { equals: Prisma.JsonNull } } })).toBe(1);
      expect(await db.auditEntry.count({ where: { before: { equals: Prisma.DbNull } } })).toBe(2);
    });

    it('are all kept when they need more than one statement', async () => {
      const { db, write } = await open();
      await write(async (tx) => {
        await seedRun(tx);
        await insertMany(
          tx,
          'Support',
          Array.from({ length: 4_001 }, (_, ordinal) => support(`s${ordinal}`, ordinal)),
        );
      });
      expect(await db.support.count()).toBe(4_001);
      expect(await db.support.findUnique({ where: { id: 's4000' } })).toMatchObject({ ordinal: 4_000 });
    });

    it('are none of them kept when one has a key that is taken', async () => {
      const { db, write } = await open();
      await write(seedRun);
      const twice = [support('same', 1), support('same', 2)];
      const refused = write((tx) => insertMany(tx, 'Support', twice));
      await expect(refused).rejects.toSatisfy(isUniqueViolation);
      expect(await db.support.count()).toBe(0);
    });

    it('refuse a column that the model does not have', async () => {
      const { write } = await open();
      const row = { ...support('s', 1), colour: 'red' };
      await expect(write((tx) => insertMany(tx, 'Support', [row]))).rejects.toThrow('Support.colour');
    });
  });
});

const awkwardJson = {
  quote: '"\'\\ ; -- $1 ?',
  unicode: 'Büro – 母線 🔌',
  empty: {},
  list: [1, 2.5, -0.0125, 1e21, true, null, []],
  text: '12',
};

const rawColumns = {
  sqlite: `SELECT typeof("releasedAt") || "releasedAt" || typeof("spec") || "spec" || typeof("layoutOk") || "layoutOk" || typeof("lengthU80") AS stored
    FROM "Run" WHERE "id" IN ('r-bulk', 'r-one')`,
  postgres: `SELECT "releasedAt"::text || "spec"::text || "layoutOk"::text AS stored FROM "Run" WHERE "id" IN ('r-bulk', 'r-one')`,
};

async function seedRun(tx: Tx): Promise<void> {
  await tx.project.create({
    data: { id: 'p', number: '1', name: 'N', search: 'n', spec: {}, extras: [], createdAt: at },
  });
  await tx.level.create({ data: { id: 'l', projectId: 'p', key: 'F1', name: 'One', ordinal: 1, spec: {} } });
  await tx.buswayType.create({ data: { id: 't', projectId: 'p', key: 'T', ordinal: 1, spec: {} } });
  await tx.run.create({ data: run('r', 1) });
}

function run(id: string, ordinal: number) {
  return {
    id,
    projectId: 'p',
    levelId: 'l',
    typeId: 't',
    key: id,
    ordinal,
    area: `area "A", 50% o'clock`,
    side: null,
    spec: awkwardJson,
    layout: [],
    lengthU80: 2_147_483_647,
    layoutOk: true,
    releasedAt: wholeSecond,
  } satisfies NewRow<'Run'>;
}

function support(id: string, ordinal: number) {
  return {
    id,
    projectId: 'p',
    runId: 'r',
    ordinal,
    mark: 'R-H01',
    atU80: -80,
    loadKg: 12,
    continuousLoadKg: 0.1 + 0.2,
  } satisfies NewRow<'Support'>;
}

function supports(prefix: string) {
  return [
    { ...support(`${prefix}1`, 1), measuredU80: 1, stateAt: at, state: 'set' },
    { ...support(`${prefix}2`, 2), measuredU80: null, stateAt: null, state: '' },
    { ...support(`${prefix}3`, 3), measuredU80: 0, stateAt: new Date(0), state: 'ünï–"x"' },
  ];
}

function strip(rows: readonly { readonly id: string }[]) {
  return rows.map((row) => ({ ...row, id: '' }));
}
