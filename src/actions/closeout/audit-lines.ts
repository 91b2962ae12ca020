import type { AuditLine } from '../../paper/package/audit-line.ts';
import type { Reader } from '../../store/database.ts';
import { detailHash } from '../audit.ts';

const PER_PAGE = 1000;

/** The entries of a chain, oldest first, a page at a time. */
export async function* readAuditLines(reader: Reader, chain: string): AsyncGenerator<AuditLine> {
  for (let from = 1; ; from += PER_PAGE) {
    const rows = await reader.auditEntry.findMany({
      where: { chain, seq: { gte: from, lt: from + PER_PAGE } },
      orderBy: { seq: 'asc' },
    });
    if (rows.length === 0) return;
    for (const { id: _id, at, before, after, ...row } of rows) {
      const details = before === null && after === null ? {} : { before, after };
      yield { ...row, at: at.toISOString(), ...details, detailHash: detailHash(before, after) };
    }
  }
}
