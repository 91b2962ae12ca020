import { createHash } from 'node:crypto';
import { promisify } from 'node:util';
import { gunzip, gzip } from 'node:zlib';
import {
  type FrozenBid,
  type FrozenBidWhole,
  type FrozenFigures,
  frozenFigures,
  frozenFiguresSchema,
  frozenText,
} from '../document/frozen-bid.ts';
import type { JobDocument } from '../document/job-document.ts';
import { canonicalJson } from '../domain/canonical-json.ts';
import { audit } from './audit.ts';
import type { Context, Viewer } from './context.ts';
import { figuresOf } from './figures.ts';
import { once, type Submission } from './once.ts';
import { cut, type Listed, type PageQuery } from './paging.ts';
import { reach } from './reach.ts';
import { refuse } from './refused.ts';

const pack = promisify(gzip);
const unpack = promisify(gunzip);

const LONGEST_NAME = 100;

/** Keeps the bid as it stands: the whole job document and its figures, with a hash. Nothing changes or removes it later. */
export async function freezeBid(
  context: Context,
  viewer: Viewer,
  projectId: string,
  name: string,
  submission: Submission | null,
): Promise<FrozenBid> {
  const called = readName(name);
  return context.database.write((tx) =>
    once(tx, context, viewer, submission, async () => {
      await reach(tx, viewer, projectId, 'money');
      const { document, figures: computed } = await figuresOf(tx, projectId);
      const figures = frozenFigures(document, computed) ?? refuseWithoutBid();
      const hash = sha256(frozenText(document, figures));
      const row = {
        id: context.newId(),
        projectId,
        name: called,
        madeBy: viewer.userId,
        madeAt: context.clock(),
        document: new Uint8Array(await pack(canonicalJson(document))),
        figures: figures as never,
        hash,
      };
      await tx.bidSnapshot.create({ data: row });
      await audit(tx, context, viewer, {
        chain: projectId,
        action: 'bid frozen',
        subject: 'bid-snapshot',
        subjectId: row.id,
        after: { name: called, price: figures.price, hash },
        money: true,
      });
      return frozen(row, viewer.name, figures.price);
    }),
  );
}

function readName(name: string): string {
  const called = name.trim();
  if (called !== '' && called.length <= LONGEST_NAME) return called;
  const message = called === '' ? 'A frozen bid needs a name.' : `The name has ${called.length} letters.`;
  return refuse({
    code: 'invalid',
    faults: [{ path: 'name', message, remedy: `Give it one of up to ${LONGEST_NAME} letters, as "Bid of 12 May".` }],
  });
}

function refuseWithoutBid(): never {
  return refuse({
    code: 'work-refused',
    what: 'There is no bid to freeze',
    remedy: 'Enter what belongs to the bid first: at least its overhead and profit.',
  });
}

/** Frozen bids, the newest first. */
export async function listFrozenBids(
  context: Context,
  viewer: Viewer,
  projectId: string,
  page: PageQuery,
): Promise<Listed<FrozenBid>> {
  const { db } = context.database;
  await reach(db, viewer, projectId, 'money');
  const [rows, total] = await Promise.all([
    db.bidSnapshot.findMany({
      where: { projectId },
      orderBy: [{ madeAt: 'desc' }, { id: 'desc' }],
      omit: { document: true },
      ...cut(page),
    }),
    db.bidSnapshot.count({ where: { projectId } }),
  ]);
  const names = await namesOf(context, rows);
  const items = rows.map((row) => frozen(row, names.get(row.madeBy), frozenFiguresSchema.parse(row.figures).price));
  return { items, total, page: page.page, limit: page.limit };
}

/** One frozen bid with its figures, and whether its hash still holds. */
export async function getFrozenBid(
  context: Context,
  viewer: Viewer,
  projectId: string,
  id: string,
): Promise<FrozenBidWhole> {
  const row = await read(context, viewer, projectId, id);
  const figures = frozenFiguresSchema.parse(row.figures);
  const names = await namesOf(context, [row]);
  const document = await documentIn(row.document);
  return {
    ...frozen(row, names.get(row.madeBy), figures.price),
    sound: sha256(frozenText(document, figures)) === row.hash,
    figures,
  };
}

/** The job document that a bid was frozen from. */
export async function frozenDocument(
  context: Context,
  viewer: Viewer,
  projectId: string,
  id: string,
): Promise<JobDocument> {
  const row = await read(context, viewer, projectId, id);
  return (await documentIn(row.document)) as JobDocument;
}

/** The figures as they would be frozen now; null without a bid. */
export async function figuresToFreeze(
  context: Context,
  viewer: Viewer,
  projectId: string,
): Promise<FrozenFigures | null> {
  await reach(context.database.db, viewer, projectId, 'money');
  const { document, figures } = await figuresOf(context.database.db, projectId);
  return frozenFigures(document, figures);
}

async function read(context: Context, viewer: Viewer, projectId: string, id: string) {
  const { db } = context.database;
  await reach(db, viewer, projectId, 'money');
  const row = await db.bidSnapshot.findFirst({ where: { id, projectId } });
  return row ?? refuse({ code: 'not-found', what: 'frozen bid' });
}

async function documentIn(packed: Uint8Array): Promise<unknown> {
  return JSON.parse((await unpack(packed)).toString('utf8'));
}

async function namesOf(
  context: Context,
  rows: readonly { readonly madeBy: string }[],
): Promise<ReadonlyMap<string, string>> {
  const ids = [...new Set(rows.map(({ madeBy }) => madeBy))];
  const users = await context.database.db.user.findMany({
    where: { id: { in: ids } },
    select: { id: true, name: true },
  });
  return new Map(users.map(({ id, name }) => [id, name]));
}

function frozen(
  row: { readonly id: string; readonly name: string; readonly madeAt: Date; readonly hash: string },
  madeBy: string | undefined,
  price: number,
): FrozenBid {
  const { id, name, madeAt, hash } = row;
  return { id, name, madeBy: madeBy ?? 'somebody who left', madeAt: madeAt.toISOString(), price, hash };
}

function sha256(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}
