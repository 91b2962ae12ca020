import type { Database } from './database.ts';

/** The site's own secret, made once and the same for every server process. */
export async function siteSecret(database: Database, make: () => string): Promise<string> {
  return database.write(async (tx) => {
    const known = await tx.site.findUnique({ where: { id: 'site' } });
    if (known !== null) return known.sessionSecret;
    const made = await tx.site.create({ data: { id: 'site', sessionSecret: make() } });
    return made.sessionSecret;
  });
}
