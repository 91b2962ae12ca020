import { createHash } from 'node:crypto';
import { readCalibration, toCalibration } from '../document/background/read-calibration.ts';
import {
  type BackgroundView,
  backgroundViewSchema,
  type CalibrationBody,
  type CalibrationDocument,
  calibrationSchema,
} from '../document/background/schema.ts';
import { judgeCalibration, sheetScale } from '../domain/background/judge-calibration.ts';
import { lengthPerPixel, similarityFrom, turnedDegrees } from '../domain/background/similarity.ts';
import { UNITS_PER_MM } from '../domain/units/length.ts';
import { type DrawnBackground, drawBackground } from '../paper/background/draw-background.ts';
import type { Reader, Tx } from '../store/database.ts';
import { audit } from './audit.ts';
import type { Context, Viewer } from './context.ts';
import { once, type Submission } from './once.ts';
import { reach } from './reach.ts';
import { refuse } from './refused.ts';
import { assertVersion } from './version.ts';

export interface SentPicture {
  readonly bytes: Uint8Array;
  readonly name: string;
  readonly page: number;
}

/** What a version is handed in as where there may be no background yet. */
export type VersionSeen = number | null;

const LONGEST_NAME = 120;
const MOST_PAGE = 10_000;

/** The picture under a level's plan, as far as it is told; null where there is none. */
export async function findBackground(
  context: Context,
  viewer: Viewer,
  projectId: string,
  levelId: string,
): Promise<BackgroundView | null> {
  const { db } = context.database;
  await reach(db, viewer, projectId);
  await assertLevel(db, projectId, levelId);
  return read(db, levelId);
}

export async function getBackground(
  context: Context,
  viewer: Viewer,
  projectId: string,
  levelId: string,
): Promise<BackgroundView> {
  return (await findBackground(context, viewer, projectId, levelId)) ?? refuseMissing();
}

/** The PNG itself. */
export async function backgroundPicture(
  context: Context,
  viewer: Viewer,
  projectId: string,
  levelId: string,
): Promise<{ readonly picture: Uint8Array; readonly sha256: string }> {
  const { db } = context.database;
  await reach(db, viewer, projectId);
  await assertLevel(db, projectId, levelId);
  const row = await db.levelBackground.findUnique({ where: { levelId }, select: { picture: true, sha256: true } });
  return row ?? refuseMissing();
}

/** Puts a picture under a level's plan, in the place of the one before; a calibration belongs to its picture and goes with it. */
export async function setBackground(
  context: Context,
  viewer: Viewer,
  projectId: string,
  levelId: string,
  seen: VersionSeen,
  sent: SentPicture,
  submission: Submission | null,
): Promise<BackgroundView> {
  const { db } = context.database;
  await reach(db, viewer, projectId, 'design');
  await assertLevel(db, projectId, levelId);
  const page = readPage(sent.page);
  const drawn = await draw(sent.bytes, page);
  return context.database.write((tx) =>
    once(tx, context, viewer, submission, async () => {
      await reach(tx, viewer, projectId, 'design');
      await assertLevel(tx, projectId, levelId);
      const before = await read(tx, levelId);
      assertSeen(before, seen);
      const keepsSource = drawn.kind === 'pdf' && drawn.pages > 1;
      return write(
        tx,
        context,
        viewer,
        { projectId, levelId, before, action: 'background set' },
        {
          ...columnsOf(drawn),
          name: nameOf(sent.name),
          source: keepsSource ? new Uint8Array(sent.bytes) : null,
        },
      );
    }),
  );
}

/** Another page of the same PDF, while it is kept. */
export async function chooseBackgroundPage(
  context: Context,
  viewer: Viewer,
  projectId: string,
  levelId: string,
  version: number,
  page: number,
): Promise<BackgroundView> {
  const { db } = context.database;
  await reach(db, viewer, projectId, 'design');
  await assertLevel(db, projectId, levelId);
  const row = (await db.levelBackground.findUnique({ where: { levelId } })) ?? refuseMissing();
  if (row.source === null)
    return refuse({
      code: 'work-refused',
      what: 'The other pages are no longer kept',
      remedy: 'Send the PDF again with the number of the page.',
    });
  const drawn = await draw(row.source, readPage(page));
  return context.database.write(async (tx) => {
    await reach(tx, viewer, projectId, 'design');
    const before = (await read(tx, levelId)) ?? refuseMissing();
    assertVersion(before, version, before);
    return write(
      tx,
      context,
      viewer,
      { projectId, levelId, before, action: 'background set' },
      {
        ...columnsOf(drawn),
        name: row.name,
        source: row.source,
      },
    );
  });
}

/** Says by two points how the picture lies in plan. The other pages of its PDF are then let go. */
export async function calibrateBackground(
  context: Context,
  viewer: Viewer,
  projectId: string,
  levelId: string,
  version: number,
  body: CalibrationBody,
): Promise<BackgroundView> {
  return context.database.write(async (tx) => {
    await reach(tx, viewer, projectId, 'design');
    await assertLevel(tx, projectId, levelId);
    const before = (await read(tx, levelId)) ?? refuseMissing();
    assertVersion(before, version, before);
    const given = readCalibration(body, { width: before.widthPx, height: before.heightPx });
    if (!given.ok) return refuse({ code: 'invalid', faults: given.faults });
    const seq = await audit(tx, context, viewer, {
      chain: projectId,
      action: 'background calibrated',
      subject: 'level',
      subjectId: levelId,
      before: before.calibration === null ? null : { points: before.calibration.points },
      after: given.calibration,
    });
    await tx.levelBackground.update({
      where: { levelId },
      data: { calibration: given.calibration, source: null, version: seq },
    });
    return (await read(tx, levelId)) ?? refuseMissing();
  });
}

export async function removeBackground(
  context: Context,
  viewer: Viewer,
  projectId: string,
  levelId: string,
  version: number,
): Promise<void> {
  await context.database.write(async (tx) => {
    await reach(tx, viewer, projectId, 'design');
    await assertLevel(tx, projectId, levelId);
    const before = (await read(tx, levelId)) ?? refuseMissing();
    assertVersion(before, version, before);
    await audit(tx, context, viewer, {
      chain: projectId,
      action: 'background removed',
      subject: 'level',
      subjectId: levelId,
      before: toldOf(before),
    });
    await tx.levelBackground.delete({ where: { levelId } });
  });
}

async function draw(bytes: Uint8Array, page: number): Promise<DrawnBackground> {
  const drawn = await drawBackground(bytes, page);
  if (drawn.ok) return drawn;
  const { path, message, remedy } = drawn;
  return refuse({ code: 'invalid', faults: [{ path, message, remedy }] });
}

type Columns = ReturnType<typeof columnsOf> & {
  readonly name: string;
  readonly source: Uint8Array<ArrayBuffer> | null;
};

/** A version is the number of its audit entry, so that none ever comes again: not even when a picture goes and another comes. */
async function write(
  tx: Tx,
  context: Context,
  viewer: Viewer,
  of: { projectId: string; levelId: string; before: BackgroundView | null; action: string },
  columns: Columns,
): Promise<BackgroundView> {
  const { projectId, levelId, before } = of;
  const { name, kind, page, pages, width, height, sha256 } = columns;
  const version = await audit(tx, context, viewer, {
    chain: projectId,
    action: of.action,
    subject: 'level',
    subjectId: levelId,
    ...(before === null ? {} : { before: toldOf(before) }),
    after: { name, kind, page, pages, widthPx: width, heightPx: height, sha256 },
  });
  await tx.levelBackground.deleteMany({ where: { levelId } });
  await tx.levelBackground.create({
    data: { levelId, ...columns, byUserId: viewer.userId, byName: viewer.name, at: context.clock(), version },
  });
  return (await read(tx, levelId)) ?? refuseMissing();
}

function columnsOf({ kind, page, pages, width, height, dotsPerInch, picture, paper }: DrawnBackground) {
  const sha256 = createHash('sha256').update(picture).digest('hex');
  return {
    kind,
    page,
    pages,
    width,
    height,
    dotsPerInch,
    picture: new Uint8Array(picture),
    paper: new Uint8Array(paper),
    sha256,
  };
}

/** Without the pictures: they are large, and asked for by themselves. */
const TOLD = {
  levelId: true,
  version: true,
  name: true,
  kind: true,
  page: true,
  pages: true,
  width: true,
  height: true,
  sha256: true,
  dotsPerInch: true,
  byName: true,
  at: true,
  calibration: true,
} as const;

async function read(reader: Reader | Tx, levelId: string): Promise<BackgroundView | null> {
  const row = await reader.levelBackground.findUnique({ where: { levelId }, select: TOLD });
  if (row === null) return null;
  const { byName, width, height, calibration, at, ...same } = row;
  const [sizes] = await reader.$queryRaw<
    { bytes: number | bigint; source: number | bigint }[]
  >`SELECT length("picture") AS "bytes", CASE WHEN "source" IS NULL THEN 0 ELSE 1 END AS "source"
    FROM "LevelBackground" WHERE "levelId" = ${levelId}`;
  return backgroundViewSchema.parse({
    ...same,
    widthPx: width,
    heightPx: height,
    bytes: Number(sizes?.bytes ?? 0),
    otherPages: Number(sizes?.source ?? 0) === 1,
    by: byName,
    at: at.toISOString(),
    calibration:
      calibration === null
        ? null
        : calibrationView(calibrationSchema.parse(calibration), { width, height, dotsPerInch: row.dotsPerInch }),
  });
}

function calibrationView(
  calibration: CalibrationDocument,
  picture: { readonly width: number; readonly height: number; readonly dotsPerInch: number | null },
) {
  const points = toCalibration(calibration);
  const placed = similarityFrom(points);
  const perPixel = lengthPerPixel(placed);
  return {
    ...calibration,
    mmPerPixel: perPixel / UNITS_PER_MM,
    turnedDeg: turnedDegrees(placed),
    sheetScale: sheetScale(perPixel, picture),
    notes: judgeCalibration(points, picture),
  };
}

async function assertLevel(reader: Reader | Tx, projectId: string, levelId: string): Promise<void> {
  const level = await reader.level.findFirst({ where: { id: levelId, projectId }, select: { id: true } });
  if (level === null) refuse({ code: 'not-found', what: 'level' });
}

/** Whoever replaces a picture must have seen it. */
function assertSeen(before: BackgroundView | null, seen: VersionSeen): void {
  if (before === null) return;
  if (seen === null) refuse({ code: 'version-needed' });
  assertVersion(before, seen, before);
}

function readPage(page: number): number {
  if (Number.isInteger(page) && page >= 1 && page <= MOST_PAGE) return page;
  return refuse({
    code: 'invalid',
    faults: [{ path: 'page', message: `"${page}" is no page of a PDF.`, remedy: 'Give a whole number from 1.' }],
  });
}

/** The last part of a file's name, as far as it is good for reading. */
function nameOf(sent: string): string {
  const last = sent.split(/[\\/]/).at(-1) ?? '';
  const plain = last
    .normalize('NFC')
    .replaceAll(/[\p{Cc}\p{Cf}\s]+/gu, ' ')
    .trim();
  return plain === '' ? 'without a name' : plain.slice(0, LONGEST_NAME);
}

function toldOf({ name, kind, page, widthPx, heightPx, sha256, calibration }: BackgroundView) {
  return { name, kind, page, widthPx, heightPx, sha256, calibration: calibration?.points ?? null };
}

function refuseMissing(): never {
  return refuse({ code: 'not-found', what: 'background' });
}
