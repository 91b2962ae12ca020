import { readCalibration } from '../document/background/read-calibration.ts';
import type { BackgroundView, CalibrationBody } from '../document/background/schema.ts';
import { audit } from './audit.ts';
import { assertLevel, readBackground, refuseMissing } from './backgrounds/read-background.ts';
import { columnsOf, drawn, nameOf, toldOf, writeBackground } from './backgrounds/write-background.ts';
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
  return readBackground(db, levelId);
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
  const picture = await drawn(sent.bytes, sent.page);
  return context.database.write((tx) =>
    once(tx, context, viewer, submission, async () => {
      await reach(tx, viewer, projectId, 'design');
      await assertLevel(tx, projectId, levelId);
      const before = await readBackground(tx, levelId);
      assertSeen(before, seen);
      const keepsSource = picture.kind === 'pdf' && picture.pages > 1;
      return writeBackground(
        tx,
        context,
        viewer,
        { projectId, levelId, before, action: 'background set' },
        {
          ...columnsOf(picture),
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
  const picture = await drawn(row.source, page);
  return context.database.write(async (tx) => {
    await reach(tx, viewer, projectId, 'design');
    const before = (await readBackground(tx, levelId)) ?? refuseMissing();
    assertVersion(before, version, before);
    return writeBackground(
      tx,
      context,
      viewer,
      { projectId, levelId, before, action: 'background set' },
      {
        ...columnsOf(picture),
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
    const before = (await readBackground(tx, levelId)) ?? refuseMissing();
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
    return (await readBackground(tx, levelId)) ?? refuseMissing();
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
    const before = (await readBackground(tx, levelId)) ?? refuseMissing();
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

/** Whoever replaces a picture must have seen it. */
function assertSeen(before: BackgroundView | null, seen: VersionSeen): void {
  if (before === null) return;
  if (seen === null) refuse({ code: 'version-needed' });
  assertVersion(before, seen, before);
}
