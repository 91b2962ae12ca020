/** The migrated database that every new one is copied from. */
export const TEMPLATE = 'jobbook_template';

/** The same server, another database. */
export function databaseUrl(serverUrl: string, name: string): string {
  const url = new URL(serverUrl);
  url.pathname = `/${name}`;
  return url.href;
}
