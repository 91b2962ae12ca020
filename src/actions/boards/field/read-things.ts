import type { Reader } from '../../../store/database.ts';

export type ThingRows = Awaited<ReturnType<typeof readThings>>;

export async function readThings(reader: Reader, runIds: readonly string[]) {
  const where = { runId: { in: [...runIds] }, retiredAt: null };
  const orderBy = [{ runId: 'asc' as const }, { ordinal: 'asc' as const }, { id: 'asc' as const }];
  const own = { id: true, runId: true, state: true } as const;
  const [pieces, joints, supports, taps] = await Promise.all([
    reader.piece.findMany({ where, orderBy, select: { ...own, mark: true, fromU80: true, toU80: true, kind: true } }),
    reader.joint.findMany({ where, orderBy, select: { ...own, mark: true, atU80: true } }),
    reader.support.findMany({ where, orderBy, select: { ...own, mark: true, atU80: true } }),
    reader.tap.findMany({ where, orderBy, select: { ...own, key: true, atU80: true } }),
  ]);
  return { pieces, joints, supports, taps };
}
