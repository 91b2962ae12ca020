import { deflateRawSync, inflateRawSync } from 'node:zlib';

/** Text that is written now and read later in the same order, kept small meanwhile. */
export interface Spool {
  readonly write: (text: string) => void;
  readonly read: () => Generator<Uint8Array>;
}

/** Much smaller blocks compress badly; much larger ones are felt in memory. */
const BLOCK = 256 * 1024;

/** The registers are filled while the book is drawn, and packed behind it: so every run is read from the record once. */
export function openSpool(): Spool {
  const blocks: Buffer[] = [];
  let pending: string[] = [];
  let size = 0;
  return {
    write: (text) => {
      pending.push(text);
      size += text.length;
      if (size < BLOCK) return;
      blocks.push(deflateRawSync(pending.join('')));
      pending = [];
      size = 0;
    },
    *read() {
      for (const block of blocks) yield inflateRawSync(block);
      if (pending.length > 0) yield Buffer.from(pending.join(''));
    },
  };
}
