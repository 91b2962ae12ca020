import { z } from 'zod';
import { type BidDocument, bidSchema } from '../document/job-document.ts';
import type { Reader } from '../store/database.ts';
import { audit } from './audit.ts';
import { contentVersion } from './content-version.ts';
import type { Context, Viewer } from './context.ts';
import { changeDesign } from './designs.ts';
import { reach } from './reach.ts';
import { assertVersion } from './version.ts';

export const bidViewSchema = z.object({
  version: z.number().int().describe('Made from what the entries say: equal entries have equal versions.'),
  document: bidSchema.nullable(),
});
export type BidView = z.infer<typeof bidViewSchema>;

/** What was entered for the bid. Office only. */
export async function getBid(context: Context, viewer: Viewer, projectId: string): Promise<BidView> {
  await reach(context.database.db, viewer, projectId, 'money');
  return read(context.database.db, projectId);
}

/** Sets the entries of the bid. No run is laid out anew: a covering's cost knows nothing of them. */
export async function setBid(
  context: Context,
  viewer: Viewer,
  projectId: string,
  version: number,
  bid: BidDocument,
): Promise<BidView> {
  return context.database.write(async (tx) => {
    await reach(tx, viewer, projectId, 'money');
    const current = await read(tx, projectId);
    assertVersion(current, version, current);
    await changeDesign(tx, context, projectId, {
      scope: [],
      change: (before) => ({ ...before, bid }),
      faultPath: (path) => path.replace(/^bid\.?/, ''),
    });
    await audit(tx, context, viewer, {
      chain: projectId,
      action: 'bid entries set',
      subject: 'bid',
      subjectId: projectId,
      before: current.document,
      after: bid,
      money: true,
    });
    return read(tx, projectId);
  });
}

async function read(reader: Reader, projectId: string): Promise<BidView> {
  const { bid } = await reader.project.findUniqueOrThrow({ where: { id: projectId }, select: { bid: true } });
  const document = bid === null ? null : bidSchema.parse(bid);
  return { version: contentVersion(document), document };
}
