import type { FileSum } from './hashed-zip.ts';

/** Lines as `sha256sum -c` reads them: `<hash>  <name>`. */
export function sha256SumsOf(sums: readonly FileSum[]): string {
  return sums.map(({ sha256, name }) => `${sha256}  ${name}\n`).join('');
}
