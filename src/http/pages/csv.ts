import type { FastifyReply } from 'fastify';

/** Sends a list as a file to save; a byte order mark tells spreadsheets that it is UTF-8. */
export function sendCsv(reply: FastifyReply, name: string, text: string): FastifyReply {
  return reply
    .type('text/csv; charset=utf-8')
    .header('content-disposition', `attachment; filename="${fileName(name)}.csv"`)
    .send(`\uFEFF${text}`);
}

/** Only what any file system takes. `fileName('P/7 Quay') = 'P-7-Quay'`. */
export function fileName(name: string): string {
  return name.replace(/[^A-Za-z0-9_-]+/g, '-').replace(/^-+|-+$/g, '') || 'job';
}
